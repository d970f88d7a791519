// Stations and rows put into the table of offsets and taken out of it.

import { el } from "../frame/dom.js";
import { post } from "../frame/wire.js";

/**
 * @param told is told why nothing was done
 * @returns what is to be seen, and how it is brought to the table as it is
 */
export function shaping(told) {
  let read = null;
  const box = el("details", { class: "shaping" });
  const picks = { before: el("select", { id: "station-before" }), station: el("select", { id: "station-out" }), after: el("select", { id: "row-after" }), row: el("select", { id: "row-out" }) };
  const typed = {
    name: el("input", { id: "station-name", type: "text", autocomplete: "off", maxlength: "200" }),
    position: el("input", { id: "station-position", type: "text", autocomplete: "off", maxlength: "200" }),
    line: el("input", { id: "row-line", type: "text", autocomplete: "off", maxlength: "200" }),
    measure: el("select", { id: "row-measure" }, ["half-breadth", "height", "position"].map((m) => el("option", { value: m }, m))),
  };
  const labelled = (words, field) => el("span", { class: "labelled" }, el("label", { for: field.id }, words), field);
  const doing = (title, fields, words, act) =>
    el(
      "form",
      {
        submit: (event) => {
          event.preventDefault();
          act();
        },
      },
      el("h3", {}, title),
      el("p", {}, fields, el("button", {}, words)),
    );
  box.append(
    el("summary", {}, "Stations and rows"),
    el(
      "div",
      { class: "shapes" },
      doing("Put in a station", [labelled("name", typed.name), labelled("position", typed.position), labelled("before", picks.before)], "Put it in", () =>
        send({ station: true, add: true, at: Number(picks.before.value), was: head(), name: typed.name.value, more: typed.position.value }, [typed.name, typed.position]),
      ),
      doing("Take out a station", [labelled("station", picks.station)], "Take it out", () => send({ station: true, add: false, at: Number(picks.station.value), was: head() })),
      doing("Put in a row", [labelled("line", typed.line), labelled("measure", typed.measure), labelled("after", picks.after)], "Put it in", () =>
        send({ station: false, add: true, at: Number(picks.after.value), was: cellsOf(picks.after.value), name: typed.line.value, more: typed.measure.value }, [typed.line]),
      ),
      doing("Take out a row", [labelled("row", picks.row)], "Take it out", () => send({ station: false, add: false, at: Number(picks.row.value), was: cellsOf(picks.row.value) })),
    ),
    el("p", { class: "aside" }, "New cells are empty: between two values they are filled along the hull. Undo takes it back; Save writes a new table."),
  );

  const head = () => read.rows[0]?.cells ?? [];
  const cellsOf = (line) => read.rows.find((r) => r.line === Number(line))?.cells ?? [];

  async function send(what, done = []) {
    const answer = await post("table/shape", what);
    if (answer.ok) {
      done.forEach((field) => {
        field.value = "";
      });
    } else {
      told(`Not taken: ${answer.told?.message ?? "the shop's computer does not answer"}.`);
    }
  }

  function offer(pick, choices) {
    const now = JSON.stringify(choices);
    if (pick.dataset.of === now) {
      return;
    }
    const was = pick.selectedOptions[0]?.textContent;
    pick.dataset.of = now;
    pick.replaceChildren(...choices.map(([value, words]) => el("option", { value: String(value) }, words)));
    const same = choices.find(([, words]) => words === was);
    pick.value = String((same ?? choices[0] ?? [""])[0]);
  }

  function renew(now) {
    read = now;
    const [, ...rest] = read.rows;
    const stations = head().slice(2).map((name, i) => [i + 3, `station ${name || i + 1}`]);
    const rows = rest.map((r) => [r.line, `${r.line}: ${[r.cells[0], r.cells[1]].filter(Boolean).join(" ") || "without a name"}`]);
    // Beyond the last one with a name: empty cells at the end of the head are no stations.
    offer(picks.before, [...stations, [head().findLastIndex((name) => name !== "") + 2, "at the end"]]);
    offer(picks.station, stations);
    offer(picks.after, rows.length > 0 ? rows : read.rows.slice(0, 1).map((r) => [r.line, "the head"]));
    offer(picks.row, rows);
  }

  return { box, renew };
}
