// The table of offsets as it stands in its file, doubts first. It is mended in the file; what is doubted there is marked here.

import { el, show } from "../frame/dom.js";
import { watch } from "../frame/shop.js";
import { json } from "../frame/wire.js";

export function table(place) {
  let isHere = true,
    painted = "";
  const box = el("section", { class: "offsets", "aria-label": "Table of offsets" });
  show(place, box);

  async function look() {
    const read = await json("table");
    const now = JSON.stringify(read);
    if (!isHere || now === painted) {
      return;
    }
    painted = now;
    if (read === null) {
      show(box, el("p", {}, "No table of offsets could be read: see what is said above."));
      return;
    }
    const doubts = Map.groupBy(read.doubts, (d) => `${d.line} ${d.column}`);
    const [head = { cells: [] }, ...rows] = read.rows;
    show(
      box,
      el("h2", {}, read.file),
      read.doubts.length === 0
        ? el("p", {}, "Nothing in it stands out.")
        : el("ol", { class: "doubts" }, read.doubts.map((d) => el("li", {}, el("a", { href: `#cell-${d.line}-${d.column}`, click: to }, d.words)))),
      el(
        "div",
        { class: "wide", tabindex: "0", role: "region", "aria-label": "Rows of the table" },
        el(
          "table",
          {},
          el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "row"), head.cells.map((c) => el("th", { scope: "col" }, c || " ")))),
          el(
            "tbody",
            {},
            rows.map((r) =>
              el(
                "tr",
                {},
                el("td", { class: "aside" }, String(r.line)),
                r.cells.map((c, i) => {
                  const found = doubts.get(`${r.line} ${i + 1}`);
                  return el(
                    i < 2 && c ? "th" : "td",
                    {
                      id: `cell-${r.line}-${i + 1}`,
                      scope: i < 2 && c ? "row" : null,
                      class: found ? "doubt" : null,
                      title: found?.map((d) => d.words).join(" ") ?? null,
                      tabindex: found ? "-1" : null,
                    },
                    c,
                    found ? el("span", { class: "hidden" }, " (doubted)") : null,
                  );
                }),
              ),
            ),
          ),
        ),
      ),
    );
  }

  function to(event) {
    event.preventDefault();
    const cell = document.getElementById(event.currentTarget.hash.slice(1));
    cell?.scrollIntoView({ block: "center", inline: "center" });
    cell?.focus();
  }

  const forget = watch((what) => (what === "facts" || what === "state") && look());
  look();
  return () => {
    isHere = false;
    forget();
  };
}
