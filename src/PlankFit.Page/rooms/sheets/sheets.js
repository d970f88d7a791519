// Keel, boards, fairness, joints, fastenings, wood, cloth, gluing and the hull as it stands: the sheets and tables of the command line. Every plank that they name leads to its place on
// the hull, and every station's row to where it stands.

import { el, show, svg } from "../frame/dom.js";
import { pick, shop, watch } from "../frame/shop.js";
import { inUnits, units } from "../frame/units.js";
import { json, text } from "../frame/wire.js";
import { boards } from "./boards.js";
import { laying } from "./laying.js";
import { readings } from "./readings.js";

const ROOMS = [
  ["check", "Check"],
  ["keel", "Keel"],
  ["boards", "Boards"],
  ["fairness", "Fairness"],
  ["joints", "Joints"],
  ["fastenings", "Fastenings"],
  ["wood", "Wood"],
  ["cloth", "Cloth"],
  ["gluing", "Gluing"],
  ["as-it-stands", "As it stands"],
];

/** Rows of a table that are shown at first. */
const FIRST = 60;

const PLANK = /\b[A-Z]?[SP]\d+-\d+/;

export function sheets(place) {
  const tabs = el("nav", { class: "tabs", "aria-label": "Sheets" });
  const search = el("div", {});
  const blanks = el("div", {});
  const box = el("div", { class: "sheets-of" });
  show(place, el("section", { class: "sheets", "aria-label": "Sheets" }, tabs, search, blanks, box));
  let shown = "",
    isHere = true,
    searching = null,
    taping = null,
    marking = null;

  const room = () => ROOMS.find(([name]) => location.hash === `#sheets/${name}`)?.[0] ?? "keel";

  async function look() {
    const name = room(),
      turn = shop.facts?.turn;
    show(tabs, ROOMS.map(([r, title]) => el("a", { href: `#sheets/${r}`, "aria-current": r === name ? "page" : null }, title)));
    if (name === "boards") {
      searching ??= boards(search, () => {
        shown = "";
        look();
      });
    } else if (searching) {
      searching.leave();
      searching = null;
      show(search);
    }
    if (name !== "gluing" && marking) {
      marking.leave();
      marking = null;
    }
    if (name === "check") {
      taping ??= readings(blanks, ({ plank, x, words }) => (plank ? toPlank(plank) : toPlace(x, words)));
    } else if (taping) {
      taping.leave();
      taping = null;
    }
    if (name === "gluing") {
      marking ??= laying(blanks);
    }
    const now = `${name} ${turn} ${units.shown}`;
    if (!turn || shown === now) {
      return;
    }
    if (shown.split(" ")[0] !== name) {
      // Another part's sheets under this one's name would be read for it.
      show(box);
    }
    shown = now;
    box.setAttribute("aria-busy", "true");
    const read = await json(inUnits(`rooms/${turn}/${name}`));
    if (!isHere || shown !== now) {
      return;
    }
    box.removeAttribute("aria-busy");
    if (read === null) {
      shown = "";
      return;
    }
    show(
      box,
      el("h2", {}, read.title),
      read.lacks ? el("p", {}, read.lacks) : null,
      read.sheets.map((s, i) => sheet(read, s, i)),
      read.tables.filter((t) => t.rows.length > 0).map(table),
    );
  }

  /** Pages of a sheet, the first at once and each other one when it is turned to. */
  function sheet(read, { title, pages }, place) {
    const page = el("div", { class: "page", tabindex: "0", role: "region", "aria-label": title });
    const count = el("span", { class: "aside" });
    let at = 0;
    async function turnTo(n) {
      at = Math.max(0, Math.min(pages - 1, n));
      count.textContent = pages > 1 ? ` page ${at + 1} of ${pages} ` : "";
      const got = await text(inUnits(`rooms/${read.turn}/${read.name}/${place}/${at}`));
      if (got !== null && isHere) {
        const drawn = document.importNode(new DOMParser().parseFromString(got, "image/svg+xml").documentElement, true);
        drawn.removeAttribute("width");
        drawn.removeAttribute("height");
        drawn.setAttribute("role", "img");
        drawn.setAttribute("aria-label", `${title}${pages > 1 ? `, page ${at + 1}` : ""}`);
        leads(drawn);
        show(page, drawn);
      }
    }
    if (pages > 0) {
      turnTo(0);
    }
    return el(
      "figure",
      {},
      el(
        "figcaption",
        {},
        el("b", {}, title),
        pages > 1
          ? [el("button", { click: () => turnTo(at - 1), "aria-label": `${title}: page before` }, "‹"), count, el("button", { click: () => turnTo(at + 1), "aria-label": `${title}: next page` }, "›")]
          : null,
      ),
      page,
    );
  }

  /** Names of planks on a drawing are touched to see the plank, and figures that speak of a place along the hull to see that. */
  function leads(drawn) {
    for (const word of drawn.querySelectorAll("text")) {
      const id = plankIn(word.textContent),
        about = /^(\S+) (.*)$/s.exec(word.dataset.about ?? "");
      if (id) {
        word.classList.add("to-plank");
        word.addEventListener("click", () => toPlank(id));
      } else if (about) {
        word.classList.add("to-place");
        word.append(svg("title", {}, about[2]));
        word.addEventListener("click", () => toPlace(Number(about[1]), about[2]));
      }
    }
  }

  function table({ title, columns, rows, places }) {
    const body = el("tbody", {});
    const at = new Map(places.map((p) => [`${p.row} ${p.column}`, p.x]));
    const fill = (to) =>
      show(
        body,
        rows.slice(0, to).map((cells, row) =>
          el(
            "tr",
            {},
            cells.map((cell, i) => {
              const words = cell === null ? "" : String(cell);
              const id = typeof cell === "string" ? plankIn(cell) : null;
              const x = at.get(`${row} ${i}`);
              return el(
                "td",
                { class: typeof cell === "number" ? "number" : null },
                id ? el("button", { class: "link", click: () => toPlank(id), "aria-label": `${words}: show ${id}` }, words)
                : x !== undefined ? el("button", { class: "link", click: () => toPlace(x, `${columns[i] === "station" ? "station " : ""}${words || "between stations"}`), "aria-label": `${words || "between stations"}: show it` }, words || "between")
                : words,
              );
            }),
          ),
        ),
        rows.length > to ? el("tr", {}, el("td", { colspan: String(columns.length) }, el("button", { click: () => fill(rows.length) }, `All ${rows.length} rows`))) : null,
      );
    fill(FIRST);
    return el(
      "details",
      {},
      el("summary", {}, `Table: ${title} `, el("span", { class: "aside" }, `${rows.length} rows`)),
      el(
        "div",
        { class: "wide", tabindex: "0", role: "region", "aria-label": title },
        el("table", {}, el("thead", {}, el("tr", {}, columns.map((c) => el("th", { scope: "col" }, c)))), body),
      ),
    );
  }

  const plankIn = (words) => {
    const id = words.match(PLANK)?.[0];
    return id && shop.facts?.order.includes(id) ? id : null;
  };

  function toPlank(id) {
    shop.place = null;
    pick(id);
    location.hash = "#bottom";
  }

  function toPlace(x, words) {
    shop.place = { x, words };
    location.hash = "#bottom";
  }

  const forget = watch((what) => what === "facts" && look());
  window.addEventListener("hashchange", look);
  look();
  return () => {
    isHere = false;
    searching?.leave();
    taping?.leave();
    marking?.leave();
    window.removeEventListener("hashchange", look);
    forget();
  };
}
