// The rows of a table of offsets with its doubts marked, to be looked at.

import { el } from "../frame/dom.js";

/** @param read its rows and doubts, as the server tells them */
export function rows(read) {
  const doubts = Map.groupBy(read.doubts, (d) => `${d.line} ${d.column}`);
  const [head = { cells: [] }, ...body] = read.rows;
  return el(
    "section",
    { class: "offsets", "aria-label": "The table as it is read" },
    read.doubts.length === 0
      ? null
      : el("ol", { class: "doubts" }, read.doubts.map((d) => el("li", {}, el("a", { href: `#cell-${d.line}-${d.column}`, click: toCell }, d.words)))),
    el(
      "div",
      { class: "wide", tabindex: "0", role: "region", "aria-label": "Rows of the table" },
      el(
        "table",
        {},
        el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "row"), head.cells.map((c) => el("th", { scope: "col" }, c || " ")))),
        el("tbody", {}, body.map((r) => el("tr", {}, el("td", { class: "aside" }, String(r.line)), r.cells.map((c, i) => cell(r, c, i, doubts))))),
      ),
    ),
  );
}

function cell(row, text, i, doubts) {
  const found = doubts.get(`${row.line} ${i + 1}`);
  return el(
    i < 2 && text ? "th" : "td",
    {
      id: `cell-${row.line}-${i + 1}`,
      scope: i < 2 && text ? "row" : null,
      class: found ? "doubt" : null,
      title: found?.map((d) => d.words).join(" ") ?? null,
      tabindex: found ? "-1" : null,
    },
    text,
    found ? el("span", { class: "hidden" }, " (doubted)") : null,
  );
}

/** Follows a link to a cell of the same page. */
export function toCell(event) {
  event.preventDefault();
  const cell = document.getElementById(event.currentTarget.hash.slice(1));
  cell?.scrollIntoView({ block: "center", inline: "center" });
  (cell?.querySelector("input") ?? cell)?.focus();
}
