// What planks are coloured by. Six steps that go from light to dark for every eye and in grey, and a letter where a colour stands for a word.

import { notes } from "../frame/notes.js";
import { fact, shop } from "../frame/shop.js";

const STEPS = ["#f3ecd2", "#dccd8d", "#b8ab62", "#84904f", "#4d7150", "#1e4a4d"];
const DONE = { "": STEPS[0], sawn: "#c79a3a", fitted: "#2a5a63", glued: "#3b2a4f" };

/** How far a plank has come: what was noted of it last, else what the record and the job say. */
export const done = (id) => notes.of.get(id)?.state || shop.facts.done[id] || "";
const LAYERS = [STEPS[1], STEPS[3], STEPS[5], STEPS[2], STEPS[4], STEPS[0]];

const figures = {
  bend: ["Bend", "fibre strain %", "% strain", (id) => fact(id, "fibre strain %")],
  twist: ["Twist", "twist deg/m", "degrees a metre", (id) => Math.abs(fact(id, "twist deg/m") ?? 0)],
  gap: [
    "Gap of straight edges",
    "widest gap mm",
    "mm",
    (id) => Math.max(fact(id, "widest gap mm") ?? 0, fact(id, "widest overlap mm") ?? 0),
  ],
};

export const ways = [
  ["layer", "Skin"],
  ...Object.entries(figures).map(([way, [name]]) => [way, name]),
  ["progress", "Progress"],
];

/** How planks are coloured now: a colour and, where it is a word, a letter for each, and the lines of the legend. */
export function colouring() {
  const { order, runs } = shop.shown;
  if (shop.colour === "progress") {
    return {
      of: (id) => DONE[done(id)],
      letter: (id) => done(id).slice(0, 1),
      legend: [
        [DONE[""], "to saw"],
        [DONE.sawn, "s: sawn"],
        [DONE.fitted, "f: fitted"],
        [DONE.glued, "g: glued"],
      ],
    };
  }
  if (!figures[shop.colour]) {
    const codes = [...new Set(runs.map((r) => r.layer))];
    const of = new Map(runs.flatMap((r) => r.planks.map((p) => [p, LAYERS[codes.indexOf(r.layer) % LAYERS.length]])));
    return {
      of: (id) => of.get(id),
      letter: () => "",
      legend: codes.map((c, i) => [LAYERS[i % LAYERS.length], `${c}: ${runs.find((r) => r.layer === c).name}`]),
    };
  }
  const [, , unit, value] = figures[shop.colour];
  const values = new Map(order.map((id) => [id, value(id) ?? 0]));
  const most = Math.max(...values.values(), 1e-9);
  const step = nice(most / STEPS.length);
  const place = (v) => Math.min(STEPS.length - 1, Math.floor(v / step));
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return {
    of: (id) => STEPS[place(values.get(id))],
    letter: () => "",
    legend: STEPS.slice(0, place(most) + 1).map((c, i) => [
      c,
      `${(i * step).toFixed(digits)} to ${((i + 1) * step).toFixed(digits)} ${unit}`,
    ]),
  };
}

/** The least of 1, 2 and 5 times a power of ten that is no less. */
function nice(x) {
  const power = 10 ** Math.floor(Math.log10(x));
  return power * [1, 2, 5, 10].find((m) => m * power >= x * (1 - 1e-9));
}

/** Black or white letters on a colour, whichever is read. */
export function inkOn(colour) {
  return STEPS.indexOf(colour) > 3 || colour === DONE.fitted || colour === DONE.glued ? "#fffdf7" : "#23211c";
}

/** The colour with the light that falls on it, from 0 to 1. */
export function lit(colour, light) {
  const part = [1, 3, 5].map((i) => Math.round(parseInt(colour.slice(i, i + 2), 16) * light));
  return `rgb(${part.join(",")})`;
}
