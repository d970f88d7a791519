// The run: a row of cells for each skin and side, stem to transom, a cell a plank, coloured as the picture. One stop of the tab key; arrows go along it.

import { el, show } from "../frame/dom.js";
import { neighbour, pick, shop } from "../frame/shop.js";
import { colouring, done, inkOn } from "./colours.js";

export function run(into) {
  const box = el("div", {
    class: "run",
    role: "listbox",
    tabindex: "0",
    "aria-label": "Planks, stem to transom",
    keydown: keys,
    click: (event) => {
      const cell = event.target.closest("[role=option]");
      if (cell) {
        pick(cell.dataset.plank);
      }
    },
    dblclick: (event) => {
      if (event.target.closest("[role=option]")) {
        toBench();
      }
    },
  });
  into.append(box);
  let typed = "";

  function keys(event) {
    const { key } = event;
    if (key === "ArrowRight" || key === "ArrowLeft") {
      pick(along(key === "ArrowRight" ? 1 : -1));
    } else if (key === "ArrowDown" || key === "ArrowUp") {
      pick(across(key === "ArrowDown" ? 1 : -1));
    } else if (key === "PageDown" || key === "PageUp") {
      pick(neighbour(key === "PageDown" ? 1 : -1));
    } else if (key === "Home" || key === "End") {
      const row = rowOf(shop.picked);
      pick(row.planks.at(key === "Home" ? 0 : -1));
    } else if (key === "Enter" && shop.picked) {
      toBench();
    } else if (/^[0-9]$/.test(key)) {
      typed = (typed + key).slice(-3);
      const row = rowOf(shop.picked);
      const found = row.planks.find((p) => Number(p.split("-")[1]) === Number(typed));
      if (found) {
        pick(found);
      } else {
        typed = key;
      }
    } else {
      return;
    }
    if (!/^[0-9]$/.test(key)) {
      typed = "";
    }
    event.preventDefault();
  }

  function paint() {
    if (!shop.facts) {
      show(box);
      return;
    }
    const by = colouring();
    show(
      box,
      shop.shown.runs
        .filter((r) => r.planks.length > 0)
        .map((r) =>
          el(
            "div",
            { class: "row", role: "group", "aria-label": `${r.name}, ${r.side}` },
            el("span", { class: "of", "aria-hidden": "true" }, `${r.planks[0].split("-")[0]} ${r.name}, ${r.side}`),
            el(
              "div",
              { class: "cells", role: "presentation" },
              r.planks.map((p) => {
                const colour = by.of(p);
                const cell = el(
                  "span",
                  {
                    role: "option",
                    id: `cell-${p}`,
                    "data-plank": p,
                    title: [p, by.words?.(p)].filter(Boolean).join(", "),
                    "aria-label": [p, done(p), by.words?.(p)].filter(Boolean).join(", "),
                    "aria-selected": String(p === shop.picked),
                  },
                  by.letter(p),
                );
                cell.style.backgroundColor = colour;
                cell.style.color = inkOn(colour);
                return cell;
              }),
            ),
          ),
        ),
    );
    mark();
  }

  function mark() {
    for (const cell of box.querySelectorAll("[aria-selected=true]")) {
      cell.setAttribute("aria-selected", "false");
    }
    for (const row of box.querySelectorAll(".row")) {
      row.classList.remove("here");
    }
    const cell = shop.picked ? document.getElementById(`cell-${shop.picked}`) : null;
    (cell?.closest(".row") ?? box.querySelector(".row"))?.classList.add("here");
    if (cell) {
      cell.setAttribute("aria-selected", "true");
      box.setAttribute("aria-activedescendant", cell.id);
    } else {
      box.removeAttribute("aria-activedescendant");
    }
  }

  return { paint, mark };
}

function rowOf(id) {
  const rows = shop.shown.runs.filter((r) => r.planks.length > 0);
  return rows.find((r) => r.planks.includes(id)) ?? rows[0];
}

function along(by) {
  const { planks } = rowOf(shop.picked);
  const here = planks.indexOf(shop.picked);
  return here < 0 ? planks[0] : planks[Math.max(0, Math.min(planks.length - 1, here + by))];
}

/** Over to the next skin or side, as far along as here. */
function across(by) {
  const rows = shop.shown.runs.filter((r) => r.planks.length > 0);
  const row = rowOf(shop.picked),
    to = rows[Math.max(0, Math.min(rows.length - 1, rows.indexOf(row) + by))];
  const part = Math.max(0, row.planks.indexOf(shop.picked)) / row.planks.length;
  return to.planks[Math.min(to.planks.length - 1, Math.round(part * to.planks.length))];
}

export function toBench() {
  location.hash = `#bench/${shop.picked}`;
}
