// What may be shown beside the planks, each on or off: the keel's layers, what lies behind, fastenings, and the seams of the skin below.

import { el, show } from "../frame/dom.js";
import { shop } from "../frame/shop.js";

/** The parts that are on. */
export const shown = new Set();

export const PARTS = [
  ["keel", "Keel"],
  ["behind", "Stringers and frames"],
  ["fastenings", "Fastenings"],
];

/** By the kind of a body its part, its colour and its line of the legend; colours part in lightness. */
const KINDS = {
  keel: { part: "keel", colour: "#6b4a2f", words: "keel" },
  stringer: { part: "behind", colour: "#a5835a", words: "stringer" },
  frame: { part: "behind", colour: "#8d97a6", words: "frame" },
  floor: { part: "behind", colour: "#55606f", words: "floor" },
  "keep solid": { part: "behind", colour: "#c9b48a", words: "kept solid" },
  "keep open": { part: "behind", colour: "#9b1c1c", words: "kept open" },
};

export const partOf = (kind) => KINDS[kind] ?? KINDS.keel;

/** What fastenings are for, in the order in which they are packed. */
export const uses = [
  { colour: "#23211c", words: "into the timber behind" },
  { colour: "#7a2a6e", words: "pulls down to the skin below" },
  { colour: "#fffdf7", words: "vent" },
];

/** A box to tick for each; of what the job does not have, what to add to it. */
export function partsChooser(repaint, moveMaster) {
  const box = el("fieldset", { class: "skins parts" });
  const lacks = el("p", { class: "aside", id: "lacking", role: "status" });

  const tick = (name, words, isOn, turn) =>
    el(
      "label",
      {},
      el("input", {
        type: "checkbox",
        name,
        checked: isOn,
        change: (event) => {
          turn(event.target.checked);
          repaint();
        },
      }),
      ` ${words}`,
    );

  function paint() {
    show(
      box,
      el("legend", {}, "Shown besides"),
      PARTS.map(([part, words]) => tick(part, words, shown.has(part), (on) => shown[on ? "add" : "delete"](part))),
      tick("ghost", "Seams of the skin below", shop.ghost, (on) => {
        shop.ghost = on;
      }),
      tick("master", "Move the master plank", false, moveMaster),
    );
    tell();
  }

  function tell() {
    show(lacks, PARTS.filter(([part]) => shown.has(part) && shop.lacking?.[part]).map(([part]) => [shop.lacking[part], " "]));
  }

  paint();
  return { box, lacks, tell };
}

/** Lines of the legend for what is on. */
export function partsLegend() {
  const bodies = Object.values(KINDS).filter((k) => shown.has(k.part) && !shop.lacking?.[k.part]);
  const points = shown.has("fastenings") && !shop.lacking?.fastenings ? uses : [];
  return [
    ...bodies.map((k) => [k.colour, k.words]),
    ...points.map((u) => [u.colour, u.words, "dot"]),
    ...(shop.ghost ? [["#3c4f8f", "seams of the skin below", "line"]] : []),
  ];
}

