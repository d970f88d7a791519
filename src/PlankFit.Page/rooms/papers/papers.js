// Every file that the command line would write, of what is laid now.

import { el, show } from "../frame/dom.js";
import { shop, watch } from "../frame/shop.js";
import { at, inTurn, json, post } from "../frame/wire.js";

const KINDS = [
  ["", "To begin with"],
  ["full-size", "Patterns in true size"],
  ["sheets", "Sheets by themselves"],
  ["drawings", "Drawings"],
  ["cards", "Cards as pictures"],
  ["dxf", "For a router or another drawing program"],
  ["tables", "Tables"],
];

export function papers(place) {
  let timer = 0,
    isHere = true,
    painted = "";
  const box = el("section", { class: "papers", "aria-label": "Papers" });
  show(place, box);

  const look = inTurn(async () => {
    clearTimeout(timer);
    const tray = await json("papers");
    if (!isHere || tray === null) {
      return;
    }
    // Painted only where something is new, so that no link is taken from under the hand.
    const now = JSON.stringify([tray, shop.facts?.turn]);
    if (now !== painted) {
      painted = now;
      paint(tray);
    }
    if (tray.what !== null) {
      timer = setTimeout(look, 400);
    }
  });

  function paint(tray) {
    const busy = tray.what !== null,
      old = tray.turn !== null && tray.turn !== shop.facts?.turn;
    show(
      box,
      el("h2", {}, "Papers"),
      el("p", {}, "Every file for the bench, as the command line writes them: the book, patterns in true size, DXF, tables."),
      busy
        ? el(
            "p",
            {},
            el("progress", { value: tray.part, max: "1", "aria-label": "Files written" }),
            ` ${tray.what} `,
            el("button", { click: () => post("papers/stop") }, "Stop"),
          )
        : el(
            "p",
            {},
            el("button", { class: "main", click: () => post("papers").then(look), disabled: !shop.facts || (tray.turn !== null && !old) },
              tray.turn === null ? "Write all files" : old ? "Write them anew" : "All files are written"),
          ),
      shop.facts
        ? el("p", {}, el("a", { href: at(`shape/${shop.facts.turn}`) }, "The shape of every plank, shape.glb"), " for a program that shows shapes (glTF, metres).")
        : null,
      tray.fault ? el("p", { class: "fault" }, tray.fault) : null,
      old ? el("p", { class: "fault" }, "These are from before the last change: do not saw by them beside newer ones.") : null,
      tray.turn === null
        ? null
        : [
            el("p", {}, el("a", { href: at(`papers/${tray.turn}/all`) }, `All ${tray.names.length} as one zip`)),
            groups(tray.names).map(([title, files]) =>
              el(
                "details",
                { open: files.length <= 12 },
                el("summary", {}, `${title} `, el("span", { class: "aside" }, String(files.length))),
                el(
                  "ul",
                  {},
                  files.map(([name, n]) => el("li", {}, el("a", { href: at(`papers/${tray.turn}/${n}`) }, name))),
                ),
              ),
            ),
          ],
    );
  }

  function groups(names) {
    const by = Map.groupBy(names.map((name, n) => [name, n]), ([name]) => (name.includes("/") ? name.split("/")[0] : ""));
    const known = KINDS.filter(([folder]) => by.has(folder)).map(([folder, title]) => [title, by.get(folder)]);
    const rest = [...by].filter(([folder]) => !KINDS.some(([k]) => k === folder));
    return [...known, ...rest];
  }

  const forget = watch((what) => what !== "picked" && what !== "colour" && look());
  look();
  return () => {
    isHere = false;
    clearTimeout(timer);
    forget();
  };
}
