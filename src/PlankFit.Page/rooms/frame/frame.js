import { bench } from "../bench/bench.js";
import { bottom } from "../bottom/bottom.js";
import { others } from "../others/others.js";
import { papers } from "../papers/papers.js";
import { lookForBoards } from "../sheets/boards.js";
import { sheets } from "../sheets/sheets.js";
import { table } from "../table/table.js";
import { ask, el, show } from "./dom.js";
import { shop, pick, early, refresh, watch, wish, changed } from "./shop.js";
import { turnUnits, units } from "./units.js";
import { look as lookAtNotes, notes } from "./notes.js";
import { listen, post } from "./wire.js";
import "./left.js";

const rooms = { bottom, others, bench, table, sheets, papers };
const names = { bottom: "Bottom", others: "Try others", bench: "Bench", table: "Table", sheets: "Sheets", papers: "Papers" };
const byId = (id) => document.getElementById(id);
const place = byId("room");
let leave = () => {};

/** A name in the address, which may have been typed. */
function named(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

function enter() {
  const [name, plank] = location.hash.slice(1).split("/");
  if (name === "room") {
    return;
  }
  const room = rooms[name] ? name : "bottom";
  if (plank && room !== "sheets") {
    pick(named(plank));
  }
  if (document.body.dataset.room !== room) {
    leave();
    document.body.dataset.room = room;
    leave = rooms[room](place) ?? (() => {});
    window.scrollTo(0, 0);
  }
  show(
    byId("rooms"),
    Object.keys(rooms).map((r) => el("a", { href: `#${r}`, "aria-current": r === room ? "page" : null }, names[r])),
  );
  stand();
  title();
}

/** The plank that is stood before is in the address, so that it is there again however the page is loaded anew. Sheets have their own names there. */
function stand() {
  const room = document.body.dataset.room;
  if (shop.picked !== null && room !== undefined && room !== "sheets") {
    history.replaceState(null, "", `#${room}/${encodeURIComponent(shop.picked)}`);
  }
}

function title() {
  const name = shop.facts?.name ?? "Planks";
  byId("name").textContent = name;
  document.title = `${names[document.body.dataset.room ?? "bottom"]}: ${name}`;
}

// Nothing to take back or to keep before anything is known of the job.
const undo = el("button", { disabled: true, click: () => wish({ undo: true }), "aria-keyshortcuts": "Control+Z" }, "Undo");
const redo = el("button", { disabled: true, click: () => wish({ redo: true }), "aria-keyshortcuts": "Control+Shift+Z" }, "Redo");
const keep = el("button", { class: "main", disabled: true, click: () => save(null) }, "Save");
const measure = el("button", { id: "units", hidden: true, click: () => measureIn(measure.value) });
byId("doing").append(undo, redo, keep, measure);

async function measureIn(to) {
  turnUnits(to);
  await refresh();
  say(to === "mm" ? "Lengths in millimetres." : "Lengths in feet and inches.");
}

/** What a touch turns to: the other of the two. */
function tellUnits() {
  const inFeet = units.shown === "ft" || (units.shown === null && /^(in|ft)/.test(shop.facts?.units ?? ""));
  measure.value = inFeet ? "mm" : "ft";
  measure.textContent = inFeet ? "Show mm" : "Show ft in";
  // Without a name, before anything is known of the job, it is not there.
  measure.hidden = false;
}

async function save(over) {
  const answer = await post("save", { over });
  if (answer.ok) {
    say(`Saved as the job file, comments and order kept${answer.told?.message ? `; ${answer.told.message}` : ""}.`);
    await refresh();
    return;
  }
  const told = answer.told ?? { message: "The shop's computer did not take it." };
  if (told.hash === null || told.hash === undefined) {
    say(`Not saved: ${told.message}`);
    return;
  }
  const taken = await ask(
    [
      el("h2", {}, `Not saved yet: ${told.message}.`),
      el("p", {}, "This stands there now:"),
      el("pre", { tabindex: "0" }, told.theirs),
      el("p", {}, "This would stand there instead:"),
      el("pre", { tabindex: "0" }, shop.state.text),
    ],
    [["replace", "Replace it by this page's"], ["", "Leave it as it is"]],
  );
  if (taken === "replace") {
    await save(told.hash);
  }
}

let spoken = 0;

/** One polite line, once the hand rests. */
function say(words) {
  clearTimeout(spoken);
  spoken = setTimeout(() => {
    byId("word").textContent = words;
  }, 300);
}

let picturedAt = "";

function told(what) {
  if (what === "picked") {
    stand();
  }
  if ((what === "planks" || what === "facts" || what === "state") && shop.state !== null) {
    // What is shown and is not of the newest text is grey.
    document.body.classList.toggle("behind", shop.isBehind);
    document.body.classList.toggle("early", shop.skins?.turn === shop.state.turn);
  }
  if (what === "facts") {
    place.setAttribute("aria-busy", "false");
    tellUnits();
    picturedAt = new Date().toTimeString().slice(0, 5);
    title();
    const { undo: done } = shop.state,
      { said } = shop.facts;
    const back = done === null ? "" : `${done}: `;
    say(said.length > 0 ? `${back}${said.join(", ")}.` : `${back}${shop.facts.order.length} planks.`);
  }
  if (what === "state") {
    undo.disabled = shop.state.undo === null;
    undo.title = shop.state.undo === null ? "" : `Take back ${shop.state.undo}`;
    redo.disabled = shop.state.redo === null;
    redo.title = shop.state.redo === null ? "" : `Once more ${shop.state.redo}`;
    keep.disabled = shop.state.saved;
    keep.textContent = shop.state.saved ? "Saved" : "Save";
    const first = shop.facts === null && shop.isBehind;
    place.setAttribute("aria-busy", String(first));
    if (first) {
      // Nothing is to be seen yet: what is being done is said.
      const name = shop.state.fields.find((f) => f.address === "job.name")?.written;
      say(`Laying the planks${name ? ` of ${name}` : ""}. The first time takes some seconds.`);
    } else if (shop.facts === null && shop.state.faults.length > 0) {
      say("No planks can be laid yet: see what is said of the job.");
    }
    faults();
  }
}

function faults() {
  const found = shop.state.faults;
  show(
    byId("trouble"),
    found.slice(0, 5).map((f) => el("p", {}, f.words)),
    found.length > 5 ? el("p", {}, `and ${found.length - 5} more`) : null,
    found.length > 0
      ? el("p", { class: "aside" }, picturedAt ? `The picture is of ${picturedAt}, before that.` : "No planks yet.")
      : null,
  );
}

let lostAt = null;

const WAIT_MS = 120;
let behind = null;

function look() {
  clearTimeout(behind);
  behind = null;
  refresh();
}

listen(
  (kind, [, , , , planks]) => {
    if (lostAt !== null) {
      lostAt = null;
      document.body.classList.remove("lost");
      say(notes.waiting > 0 ? `Together again: ${notes.waiting} notes are sent.` : "Together again.");
      lookAtNotes();
    }
    if (kind === "papers" || kind === "others" || kind === "boards") {
      changed(kind);
      if (kind === "boards") {
        lookForBoards();
      }
    } else if (kind === "planks") {
      early(Number(planks));
    } else if (kind === "notes") {
      lookAtNotes();
    } else if (kind === "state" && shop.facts !== null) {
      // The job's sentences wait a little for the planks, which are looked at first.
      behind ??= setTimeout(look, WAIT_MS);
    } else {
      look();
    }
  },
  () => {
    if (lostAt === null) {
      lostAt = new Date().toTimeString().slice(0, 5);
      document.body.classList.add("lost");
      say(`The shop's computer has not answered since ${lostAt}. You can read and note what is sawn and fitted: keep this page open, and it is sent when it is back.`);
    }
  },
);

document.addEventListener("keydown", (event) => {
  const field = event.target.closest?.("input, textarea");
  // In a field that is being typed in the keys are the field's own.
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || (field && field.value !== field.dataset.was)) {
    return;
  }
  event.preventDefault();
  wish(event.shiftKey ? { redo: true } : { undo: true });
});

byId("skip").addEventListener("click", (event) => {
  event.preventDefault();
  place.focus();
});

watch(told);
window.addEventListener("hashchange", enter);
enter();
refresh();
lookAtNotes();
lookForBoards();
