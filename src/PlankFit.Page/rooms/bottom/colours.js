// What planks are coloured by. Six steps that go from light to dark for every eye and in grey, and a letter where a colour stands for a word.

import { notes } from "../frame/notes.js";
import { sawing } from "../frame/sawing.js";
import { fact, shop } from "../frame/shop.js";

const STEPS = ["#f3ecd2", "#dccd8d", "#b8ab62", "#84904f", "#4d7150", "#1e4a4d"];
const DONE = { "": STEPS[0], sawn: "#c79a3a", fitted: "#2a5a63", glued: "#3b2a4f" };

/** How far a plank has come: what was noted of it last, else what the record and the job say. */
export function done(id) {
  const waits = sawing(id);
  return notes.of.get(id)?.state || (waits === null ? shop.facts.done[id] : waits.forget ? "" : "sawn") || "";
}


const LAYERS = [STEPS[1], STEPS[3], STEPS[5], STEPS[2], STEPS[4], STEPS[0]];

const figures = {
  bend: ["Bend", "fibre strain %", "% strain", (id) => fact(id, "fibre strain %") ?? 0],
  twist: ["Twist", "twist deg/m", "degrees a metre", (id) => Math.abs(fact(id, "twist deg/m") ?? 0)],
  gap: [
    "Gap of straight edges",
    "widest gap mm",
    "",
    (id) => Math.max(fact(id, "widest gap mm") ?? 0, fact(id, "widest overlap mm") ?? 0),
  ],
  sure: ["Sureness of length", null, "either way, 19 times in 20 if [trust] is right", (id) => shop.facts.sure[shop.facts.order.indexOf(id)] ?? null],
};

export const ways = [
  ["layer", "Skin"],
  ...Object.entries(figures).map(([way, [name]]) => [way, name]),
  ["board", "Board"],
  ["progress", "Progress"],
];

/** Of what is not told of a plank. */
const UNTOLD = "#fffdf7";

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
  if (shop.colour === "board") {
    return byBoard();
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
  if (shop.colour === "sure" && (shop.facts.sure ?? []).length === 0) {
    return plain("The job does not ask how sure its planks are: add [trust] (plankfit help trust).");
  }
  const [, , unit, value] = figures[shop.colour];
  return stepped(new Map(order.map((id) => [id, value(id)])), unit, shop.facts.scales[shop.colour]);
}

/** Boards are many: colours go round, and each plank's own is told where it is pointed at or picked. */
function byBoard() {
  if (shop.boards === null) {
    return plain("No plan of cutting of these planks: search for one under Sheets, Boards.");
  }
  const names = [...new Set(Object.values(shop.boards))].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
  const place = (id) => names.indexOf(shop.boards[id]);
  return {
    of: (id) => (place(id) < 0 ? UNTOLD : STEPS[place(id) % STEPS.length]),
    letter: () => "",
    words: (id) => (place(id) < 0 ? "in no board" : `out of ${shop.boards[id]}`),
    legend: [
      ...names.map((name, i) => [STEPS[i % STEPS.length], name]),
      ...(shop.shown.order.some((id) => place(id) < 0) ? [[UNTOLD, "in no board"]] : []),
    ],
  };
}

/** All in one colour, and why. */
const plain = (why) => ({ of: () => UNTOLD, letter: () => "", legend: [[UNTOLD, why]] });

/**
 * Six steps from nought, from light to dark; what has no figure is told so.
 *
 * @param scale of lengths, worded in the units that are shown; other figures have none
 */
function stepped(values, unit, scale) {
  const most = Math.max(...[...values.values()].filter((v) => v !== null), 1e-9);
  const step = scale?.stepMm ?? nice(most / STEPS.length);
  const place = (v) => Math.min(STEPS.length - 1, Math.floor(v / step));
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return {
    of: (id) => (values.get(id) === null ? UNTOLD : STEPS[place(values.get(id) ?? 0)]),
    letter: (id) => (values.get(id) === null ? "?" : ""),
    legend: [
      ...STEPS.slice(0, place(most) + 1).map((c, i) => [
        c,
        `${scale?.words[i] ?? `${(i * step).toFixed(digits)} to ${((i + 1) * step).toFixed(digits)}`} ${unit}`,
      ]),
      ...([...values.values()].includes(null) ? [[UNTOLD, "?: not told, to be fitted in place"]] : []),
    ],
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
