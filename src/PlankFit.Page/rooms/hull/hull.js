// A new hull: her table and the fewest answers, laid as soon as there is enough; a folder is made once it is asked for.

import { el, show } from "../frame/dom.js";
import { rows } from "../table/rows.js";

const byId = (id) => document.getElementById(id);
const MOST = 1_000_000;

const EXAMPLE = `line,measure,0,1,2,3,4,5,6
,position,0,600,1200,1800,2400,3000,3600
keel edge,height,340,214,129,78,51,41,40
keel edge,half-breadth,26,28,30,32,34,36,38
chine,height,437,385,316,253,206,179,171
chine,half-breadth,150,328,471,579,654,697,710
`;

const choose = ["", "choose"];
const units = [choose, ["mm", "mm"], ["cm", "cm"], ["m", "m"], ["in", "inches"], ["ft", "feet"], ["ft-in-8", "feet-inches-eighths, as 5-4-6"]];
const questions = [
  { address: "job.name", label: "What is she called?" },
  { address: "job.units", label: "Her lengths are in", choices: units, wanted: true, guess: "units" },
  { address: "hull.offsets-are-to", label: "The table is to the", choices: [["outside", "outside of all planking and cloth"], ["inside", "inside of it"]] },
  { address: "hull.keel", label: "The planks' inner ends meet the line", wanted: true, guess: "keel", choices: "lines" },
  { address: "hull.chine", label: "Their outer ends meet the line", wanted: true, guess: "chine", choices: "lines" },
  { address: "layers", label: "Skins", choices: [["1", "one"], ["2", "two, on opposite diagonals"], ["3", "three, heading by turns"], ["4", "four, heading by turns"]], value: "2" },
  { address: "layer[0].thickness", label: "A plank is thick", wanted: true, about: "of each skin, as in 9, 9 mm or 3/8 in" },
  { address: "layer[0].width", label: "Its stock is wide", wanted: true, about: "before anything is cut from it, as in 120 or 6 in" },
  { address: "layer[0].angle", label: "Its angle to the keel, degrees", value: "45" },
  { address: "layer[0].heads", label: "The inner skin's planks head", choices: [["aft", "aft, going out from the keel"], ["forward", "forward"]] },
];

/** By address: its field, and whether somebody has answered it by hand. */
const fields = new Map();
let lines = [];

function question(asked) {
  const id = `ask-${asked.address}`,
    answered = () => {
      fields.get(asked.address).isOwn = true;
      changed();
    };
  const field = asked.choices
    ? el("select", { id, change: answered }, options(asked.choices === "lines" ? [choose] : asked.choices))
    : el("input", { id, type: "text", autocomplete: "off", spellcheck: "false", input: answered });
  if (asked.value) {
    field.value = asked.value;
  }
  fields.set(asked.address, { field, isOwn: false });
  return el(
    "div",
    { class: asked.wanted ? "question wanted" : "question" },
    el("label", { for: id }, asked.label),
    field,
    asked.about ? el("p", { class: "aside" }, asked.about) : null,
  );
}

const options = (choices) => choices.map(([value, words]) => el("option", { value }, words));

/** What the table tells of itself is put in where nobody has answered. */
function propose(guess) {
  if (JSON.stringify(lines) !== JSON.stringify(guess.lines)) {
    lines = guess.lines;
    for (const asked of questions.filter((q) => q.choices === "lines")) {
      const { field } = fields.get(asked.address),
        was = field.value;
      show(field, options([choose, ...lines.map((l) => [l, l])]));
      field.value = lines.includes(was) ? was : "";
    }
  }
  let isNew = false;
  for (const asked of questions.filter((q) => q.guess)) {
    const of = fields.get(asked.address),
      proposed = guess[asked.guess] ?? "";
    if (!of.isOwn && of.field.value !== proposed) {
      of.field.value = proposed;
      isNew = true;
    }
  }
  return isNew;
}

const typed = () => Object.fromEntries(questions.filter((q) => q.address !== "layers").map((q) => [q.address, fields.get(q.address).field.value.trim()]));

async function post(path, more = {}) {
  const values = typed();
  // A job has a name; until she has one she is what she is.
  values["job.name"] ||= "New hull";
  return fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-PlankFit": "1" },
    body: JSON.stringify({ table: byId("table").value, typed: values, layers: Number(fields.get("layers").field.value), ...more }),
  });
}

let waiting = 0,
  turn = 0,
  busy = false,
  picture = null;

/** Looked at once the hand rests, one after the other. */
function changed() {
  turn += 1;
  byId("laid").classList.add("old");
  clearTimeout(waiting);
  waiting = setTimeout(look, 350);
}

async function look() {
  if (busy) {
    return;
  }
  busy = true;
  const of = turn;
  try {
    const answer = await post("/new/look");
    if (answer.ok) {
      told(await answer.json());
    } else {
      byId("word").textContent = answer.status === 413 ? "That is more than a table of offsets: 2 MB at most." : "The shop's computer did not take it.";
    }
  } catch {
    byId("word").textContent = "The shop's computer does not answer. What is typed here stays: keep this page open.";
  } finally {
    busy = false;
  }
  if (of !== turn) {
    look();
  }
}

function told({ table, guess, missing, found, skins, picture: drawn }) {
  const again = propose(guess);
  show(byId("read"), table.rows.length > 1 ? rows(table) : null);
  byId("missing").textContent = missing.length > 0 && table.rows.length > 0 ? `Still to be told: ${missing.join(", ")}.` : "";
  byId("planks").hidden = table.rows.length === 0 || missing.length > 0;
  byId("laid").classList.remove("old");
  if (skins !== null) {
    if (picture !== null) {
      URL.revokeObjectURL(picture);
    }
    picture = URL.createObjectURL(new Blob([drawn], { type: "image/svg+xml" }));
  }
  // What is said of a cell stands beside the table already.
  const ofCells = new Set(table.doubts.map((d) => d.words)),
    others = found.filter((f) => !ofCells.has(f.words));
  const runs = (skins?.runs ?? []).map((r) => `${r.name}, ${r.side}: ${r.planks.length}`);
  const words = skins === null ? "No planks yet: see what is wrong." : `${skins.order.length} planks. ${runs.join("; ")}.`;
  show(
    byId("laid"),
    el("p", {}, words),
    skins === null ? null : el("img", { src: picture, alt: `The planks as they lie, seen from ahead and above: ${words}` }),
    others.length > 0 ? el("ul", { id: "found" }, others.slice(0, 12).map((f) => el("li", {}, f.words))) : null,
    others.length > 12 ? el("p", {}, `and ${others.length - 12} more`) : null,
  );
  byId("word").textContent = missing.length > 0 ? "" : words;
  if (again) {
    changed();
  }
}

byId("table").addEventListener("input", changed);
byId("table").addEventListener("keydown", (event) => {
  // A tab parts cells, as it does where the table comes from; Escape and then Tab leads on.
  if (event.key === "Tab" && !event.shiftKey && !leaving && byId("table").value.includes("\t")) {
    event.preventDefault();
    byId("table").setRangeText("\t", byId("table").selectionStart, byId("table").selectionEnd, "end");
    changed();
  }
  leaving = event.key === "Escape";
});
let leaving = false;

byId("file").addEventListener("change", async () => {
  const [file] = byId("file").files;
  if (!file) {
    return;
  }
  if (file.size > MOST) {
    byId("word").textContent = `${file.name} is no table of offsets: it has ${Math.round(file.size / 1e6)} MB.`;
    return;
  }
  byId("table").value = (await file.text()).replace(/^\ufeff/, "");
  changed();
});

byId("example").addEventListener("click", () => {
  byId("table").value = EXAMPLE;
  changed();
});

let ownFolder = false;
byId("folder").addEventListener("input", () => (ownFolder = true));
byId("keep").addEventListener("submit", async (event) => {
  event.preventDefault();
  byId("refused").textContent = "";
  const answer = await post("/new", { folder: byId("folder").value }).catch(() => null);
  const read = answer?.headers.get("Content-Type")?.includes("json") ? await answer.json() : null;
  if (answer?.ok) {
    isKept = true;
    location.assign(read.address);
    return;
  }
  byId("refused").textContent = read?.message ?? "The shop's computer did not take it.";
});

let isKept = false;
window.addEventListener("beforeunload", (event) => {
  if (!isKept && byId("table").value.trim().length > 0) {
    event.preventDefault();
  }
});

show(byId("questions"), questions.map(question));
fields.get("job.name").field.addEventListener("input", () => {
  if (!ownFolder) {
    byId("folder").value = fields.get("job.name").field.value.replace(/[^\p{L}\p{N} \-_.,'()&+]/gu, "").trim();
  }
});
// What a browser has kept of a page that was left.
if (byId("table").value.trim().length > 0) {
  changed();
}
