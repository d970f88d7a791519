// The table of offsets, to be mended: doubts first, each with what was probably meant, at a touch; the lines beside it. It is saved as a new table.

import { el, show } from "../frame/dom.js";
import { shop, watch } from "../frame/shop.js";
import { at, inTurn, json, post } from "../frame/wire.js";
import { toCell } from "./rows.js";
import { shaping } from "./shaping.js";

export function table(place) {
  let isHere = true,
    shape = "",
    drawn = "",
    read = null;
  /** By line and column: the field of a cell. */
  const fields = new Map();
  const head = el("h2", {}),
    told = el("p", { role: "status" }),
    doubts = el("div"),
    grid = el("div", { class: "wide", role: "region", "aria-label": "Rows of the table" }),
    lines = el("div", { class: "lines" });
  const shapes = shaping((words) => {
    told.textContent = words;
  });
  const box = el("section", { class: "offsets", "aria-label": "Table of offsets" });
  show(place, box);

  const look = inTurn(async () => {
    const now = await json("table");
    if (!isHere) {
      return;
    }
    read = now;
    if (read === null) {
      shape = "";
      const isLaid = shop.state !== null && shop.state.tried === shop.state.turn;
      show(box, el("p", {}, isLaid ? "No table of offsets could be read: see what is said above." : "The table is being read."));
      return;
    }
    const shaped = JSON.stringify(read.rows.map((r) => [r.line, r.cells.length]));
    if (shaped !== shape) {
      shape = shaped;
      show(box, head, told, el("div", { class: "beside" }, el("div", {}, doubts, grid, shapes.box), lines));
      build();
    }
    renew();
    shapes.renew(read);
  });

  /** Every row as wide as the head: a cell that is left out can be written in. */
  function build() {
    fields.clear();
    const [first = { line: 1, cells: [] }, ...rest] = read.rows;
    show(
      grid,
      el(
        "table",
        {},
        el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "row"), first.cells.map((_, i) => cell("th", first.line, i, { scope: "col" })))),
        el(
          "tbody",
          {},
          rest.map((r) => el("tr", {}, el("td", { class: "aside" }, String(r.line)), first.cells.map((_, i) => cell(i < 2 ? "th" : "td", r.line, i, i < 2 ? { scope: "row" } : {})))),
        ),
      ),
    );
    reach(fields.get(`${rest[0]?.line} 3`) ?? [...fields.values()][0]);
  }

  function cell(tag, line, i, more) {
    const field = el("input", {
      type: "text",
      class: i < 2 ? "word" : null,
      autocomplete: "off",
      spellcheck: "false",
      tabindex: "-1",
      change: () => send(field, field.value),
      focus: () => reach(field),
      input: () => fit(field),
      keydown: keys,
    });
    field.dataset.line = line;
    field.dataset.column = i + 1;
    fields.set(`${line} ${i + 1}`, field);
    return el(tag, { id: `cell-${line}-${i + 1}`, ...more }, field);
  }

  /** One cell is reached by the tab key; from it the arrows lead on. */
  function reach(field) {
    for (const other of fields.values()) {
      other.tabIndex = other === field ? 0 : -1;
    }
  }

  function keys(event) {
    const field = event.currentTarget,
      isOwn = field.value !== field.dataset.was,
      atEnd = field.selectionStart === field.value.length,
      atStart = field.selectionEnd === 0;
    const step = { ArrowUp: [-1, 0], ArrowDown: [1, 0], Enter: [1, 0], ArrowLeft: atStart || !isOwn ? [0, -1] : null, ArrowRight: atEnd || !isOwn ? [0, 1] : null }[event.key];
    if (event.key === "Escape") {
      field.value = field.dataset.was;
      fit(field);
    }
    if (!step || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) {
      return;
    }
    const order = read.rows.map((r) => r.line),
      line = order[order.indexOf(Number(field.dataset.line)) + step[0]],
      next = fields.get(`${line} ${Number(field.dataset.column) + step[1]}`);
    event.preventDefault();
    if (next) {
      next.focus();
      next.select();
    } else {
      field.blur();
    }
  }

  function fit(field) {
    field.size = Math.max(field.value.length, 3);
  }

  function renew() {
    const byCell = Map.groupBy(read.doubts, (d) => `${d.line} ${d.column}`),
      meant = new Map(read.meant.map((m) => [`${m.line} ${m.column}`, m.value])),
      [first = { cells: [] }] = read.rows;
    show(head, read.isMended ? `${read.file}, mended and not saved` : read.file);
    told.textContent = read.isMended
      ? "Save writes it as a new table beside the job; the old one stays, and has the job name the new one."
      : "A value that you change is laid at once; nothing is written before you save, and then as a new table.";
    for (const row of read.rows) {
      for (let i = 0; i < first.cells.length; i++) {
        const key = `${row.line} ${i + 1}`,
          field = fields.get(key),
          now = row.cells[i] ?? "",
          found = byCell.get(key);
        // What is being typed stays, and with it what stood there when it was begun: another's change meanwhile is then told and not written over.
        if (field.value === (field.dataset.was ?? "") || document.activeElement !== field) {
          field.value = now;
          field.dataset.was = now;
        }
        fit(field);
        const name = row === first ? (i < 2 ? `Head, column ${i + 1}` : `Name of station ${i - 1}`) : i < 2 ? (i === 0 ? `Line of row ${row.line}` : `Measure of row ${row.line}`) : `${[row.cells[0], row.cells[1]].filter(Boolean).join(" ")}, station ${first.cells[i]}`;
        field.setAttribute("aria-label", found ? `${name}, doubted` : name);
        field.parentElement.classList.toggle("doubt", Boolean(found));
        field.title = found?.map((d) => d.words).join(" ") ?? "";
      }
    }
    show(
      doubts,
      read.doubts.length === 0
        ? el("p", {}, "Nothing in it stands out.")
        : el(
            "ol",
            { class: "doubts" },
            read.doubts.map((d) => {
              const value = meant.get(`${d.line} ${d.column}`);
              return el(
                "li",
                {},
                el("a", { href: `#cell-${d.line}-${d.column}`, click: toCell }, d.words),
                value === undefined ? null : [" ", el("button", { class: "take", click: () => take(d.line, d.column, value) }, `Take ${value}`)],
              );
            }),
          ),
    );
    draw(read.lines === null ? null : at(`lines/${read.lines}`));
  }

  /** The lines before stay until the new ones are there; those of a turn that is passed over never come. */
  function draw(from) {
    if (from === drawn) {
      return;
    }
    drawn = from;
    if (from === null) {
      show(lines, el("p", { class: "aside" }, "No lines can be drawn of it as it is."));
      return;
    }
    const img = el("img", {
      src: from,
      alt: "The lines of the table: profile, half-breadths and sections",
      load: () => drawn === from && show(lines, img),
      error: () => {
        drawn = drawn === from ? "" : drawn;
      },
    });
  }

  const take = (line, column, value) => send(fields.get(`${line} ${column}`), value);

  /** Where a cell is shown: its row's line and measure and its station, as they were known when it was made. */
  function namesOf(field) {
    const row = read.rows.find((r) => r.line === Number(field.dataset.line));
    return [row?.cells[0] ?? "", row?.cells[1] ?? "", read.rows[0]?.cells[Number(field.dataset.column) - 1] ?? ""];
  }

  async function send(field, typed) {
    const was = field.dataset.was;
    if (typed.trim() === was) {
      field.value = was;
      return;
    }
    field.value = typed;
    const answer = await post("table", { line: Number(field.dataset.line), column: Number(field.dataset.column), was, typed, names: namesOf(field) }).catch(() => null);
    if (!answer?.ok) {
      told.textContent = `Not taken: ${answer?.told?.message ?? "the shop's computer does not answer"}.`;
      field.value = field.dataset.was;
      fit(field);
    } else {
      field.dataset.was = typed.trim();
    }
  }

  const forget = watch((what) => (what === "facts" || what === "state") && look());
  look();
  return () => {
    isHere = false;
    forget();
  };
}
