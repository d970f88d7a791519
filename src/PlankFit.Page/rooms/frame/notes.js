// What was noted of planks: fitted, glued, a note, what it lacks. A note is kept in this browser until the shop's computer has it, so that none is lost where the network is, and
// each has a number by which it is known, so that none is written twice.

import { changed, shop, watch } from "./shop.js";
import { inTurn, json, post } from "./wire.js";
import { putAside } from "./aside.js";

/** By the job's own id, not by its number, which is another hull's where the server is started elsewhere. */
const keyOf = (job) => `plankfit notes ${job}`;
const NAME = "plankfit browser";

/** By plank, and by the name of what else is laid: its state, note and what it is off by, as the shop's computer has them and with what waits here on top. */
export const notes = {
  of: new Map(),
  waiting: 0,
  /** Of which planks, and of what else is laid, something waits. */
  late: new Set(),
  fault: "",
  told: "",
  /** By blank of the check sheet, what was typed in it and waits here to be sent. */
  reading: new Map(),
  /** By blank, what was typed in it and was refused, and why. */
  refused: new Map(),
};

/** What pages before this one kept, until this one has it; and what of it this one has. */
const left = [],
  had = new Set();

let kept = { client: `${browserName()}.${chance(6)}`, n: 0, waiting: [], refused: [] },
  job = null,
  inJournal = [],
  newest = 0,
  taken = 0,
  sending = false;

function chance(bytes) {
  return [...crypto.getRandomValues(new Uint8Array(bytes))].map((b) => b.toString(16).padStart(2, "0")).join("");
}

/** This browser's own name, whichever of its pages notes something. */
function browserName() {
  try {
    const name = localStorage.getItem(NAME) ?? chance(12);
    localStorage.setItem(NAME, name);
    return name;
  } catch {
    return chance(12);
  }
}

/**
 * A page counts by itself, since two pages of one browser that counted together would each take a number that the other has used. What pages before this one left waiting is taken
 * over under its own numbers; where such a page is still there and sends it too, it is written once.
 */
function load() {
  try {
    left.push(...Object.keys(localStorage).filter((k) => k.startsWith(`${keyOf(job)} `)));
    left.forEach(takeOver);
  } catch {
    // Nothing is kept here.
  }
}

/** What another page keeps under that key, as far as this one has not taken it over before. */
function takeOver(key) {
  const read = readable(localStorage.getItem(key));
  const isNew = (which, name) => !had.has(`${which} ${name}`) && had.add(`${which} ${name}`);
  kept.waiting.push(...(read?.waiting ?? []).filter((n) => isNew("waits", `${n.client} ${n.n}`)));
  kept.refused.push(...(read?.refused ?? []).filter((r) => isNew("refused", JSON.stringify(r))));
}

/** Which job this page is of is known with the first state. */
function known(of) {
  if (job === null && of) {
    job = of;
    load();
    gather();
    send();
  }
}

function readable(text) {
  try {
    const read = JSON.parse(text);
    return Array.isArray(read?.waiting) ? read : null;
  } catch {
    return null;
  }
}

/** By this browser's clock, the day as well: which day of the work a plank was glued on is planned by. */
export function moment() {
  const now = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}

function keep() {
  try {
    // Such a page may still be open, and have kept more since.
    left.forEach(takeOver);
    kept.name = shop.facts?.name ?? kept.name;
    const key = `${keyOf(job)} ${kept.client}`;
    if (kept.waiting.length + kept.refused.length > 0) {
      localStorage.setItem(key, JSON.stringify(kept));
    } else {
      localStorage.removeItem(key);
    }
    left.splice(0).forEach((k) => localStorage.removeItem(k));
  } catch {
    // It holds for as long as the page is open.
  }
}

function gather() {
  notes.of = new Map();
  for (const { plank, field, value } of [...inJournal, ...kept.waiting]) {
    notes.of.set(plank, { ...notes.of.get(plank), [field]: value });
  }
  notes.reading = new Map(kept.waiting.filter((n) => n.plank === "").map((n) => [n.field, n.value]));
  notes.refused = new Map(kept.refused.map((r) => [r.field, r]));
  notes.late = new Set(kept.waiting.map((n) => n.plank));
  notes.waiting = kept.waiting.length;
  changed("notes");
}

export const look = inTurn(async () => {
  let read, before;
  do {
    // What was taken while this was on its way may be in it or not: asked once more.
    before = taken;
    read = await json("notes");
  } while (read !== null && before !== taken);
  if (read !== null) {
    [inJournal, newest, notes.fault] = [read.notes, read.newest, read.fault];
  }
  gather();
  await send();
});

/** @param more of a reading, in which units lengths were shown and what it should have said */
export function note(plank, field, value, more = {}) {
  kept.n += 1;
  kept.waiting.push({ client: kept.client, n: kept.n, plank, field, value, seen: newest, at: moment(), job, ...more });
  kept.refused = kept.refused.filter((r) => plank !== "" || r.field !== field);
  keep();
  gather();
  send();
}

/** Takes over what waited for another hull's page, or for this one's from before its folder was moved: under its own numbers, so that what is written already is not written twice. */
export function adopt({ waiting, refused = [] }) {
  kept.waiting.push(...waiting.map((n) => ({ ...n, job, seen: n.seen <= newest ? n.seen : 0 })));
  refused.forEach(({ field, value }) => note("", field, value));
  keep();
  gather();
  send();
}

async function send() {
  if (sending || kept.waiting.length === 0) {
    return;
  }
  sending = true;
  let atOnce = 50;
  while (kept.waiting.length > 0) {
    const batch = kept.waiting.slice(0, atOnce);
    const answer = await post("notes", { notes: batch });
    if (answer.code === 0) {
      // Not in reach: what waits is sent when it is again.
      break;
    }
    notes.told = (answer.told?.told ?? []).join(" ");
    if (!answer.ok && (answer.code !== 409 || answer.told?.isHeldUp)) {
      // Held up on the shop's computer, a full disk or a file in use, or another hull is served there: they wait here.
      break;
    }
    if (!answer.ok && batch.length > 1) {
      // One of them will not do, and keeps none of the others out when they go one by one.
      atOnce = 1;
      continue;
    }
    if (answer.ok) {
      // It is known from now on, whether news of it comes or was sent before this page listened.
      inJournal = [...inJournal, ...batch];
      taken += 1;
    }
    if (!answer.ok && batch[0].plank === "") {
      // What somebody read is not lost for having been mistyped: it stays in its blank, with what is wrong.
      kept.refused = [...kept.refused.filter((r) => r.field !== batch[0].field), { field: batch[0].field, value: batch[0].value, words: notes.told }];
      notes.told = "";
    } else if (!answer.ok) {
      putAside(job, [{ ...batch[0], words: notes.told }]);
    }
    // What was refused is said and put aside, or it would stand in the way of all that follows.
    kept.waiting = kept.waiting.filter((n) => !batch.includes(n));
    keep();
  }
  sending = false;
  gather();
}

window.addEventListener("beforeunload", (event) => {
  if (kept.waiting.length > 0 && !shop.isLeaving) {
    event.preventDefault();
  }
});

watch((what) => what === "state" && known(shop.state?.job));
known(shop.state?.job);

// Whether the network is back is told by the browser, by the news, and at the latest by trying.
window.addEventListener("online", send);
setInterval(send, 5000);
