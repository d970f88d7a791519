// What was noted of planks: fitted, glued, a note, what it lacks. A note is kept in this browser until the shop's computer has it, so that none is lost where the network is, and
// each has a number by which it is known, so that none is written twice.

import { changed, shop } from "./shop.js";
import { json, post } from "./wire.js";

const KEY = `plankfit notes ${location.pathname}`;

/** By plank: its state, note and what it is off by, as the shop's computer has them and with what waits here on top. */
export const notes = { of: new Map(), waiting: 0, fault: "", told: "" };

let kept = load(),
  known = [],
  newest = 0,
  taken = 0,
  sending = false;

function load() {
  try {
    const read = JSON.parse(localStorage.getItem(KEY));
    if (typeof read?.client === "string" && Array.isArray(read.waiting)) {
      return read;
    }
  } catch {
    // Nothing that could be read is kept here.
  }
  return { client: [...crypto.getRandomValues(new Uint8Array(12))].map((b) => b.toString(16).padStart(2, "0")).join(""), n: 0, waiting: [] };
}

/** By this browser's clock, the day as well: which day of the work a plank was glued on is planned by. */
function moment() {
  const now = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}

function keep() {
  localStorage.setItem(KEY, JSON.stringify(kept));
}

function gather() {
  notes.of = new Map();
  for (const { plank, field, value } of [...known, ...kept.waiting]) {
    notes.of.set(plank, { ...notes.of.get(plank), [field]: value });
  }
  notes.waiting = kept.waiting.length;
  changed("notes");
}

export async function look() {
  let read, before;
  do {
    // What was taken while this was on its way may be in it or not: asked once more.
    before = taken;
    read = await json("notes");
  } while (read !== null && before !== taken);
  if (read !== null) {
    [known, newest, notes.fault] = [read.notes, read.newest, read.fault];
  }
  gather();
  await send();
}

export function note(plank, field, value) {
  kept.n += 1;
  kept.waiting.push({ client: kept.client, n: kept.n, plank, field, value, seen: newest, at: moment() });
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
    if (!answer.ok && answer.code !== 409) {
      // Held up on the shop's computer, a full disk or a file in use: they wait here.
      break;
    }
    if (!answer.ok && batch.length > 1) {
      // One of them will not do, and keeps none of the others out when they go one by one.
      atOnce = 1;
      continue;
    }
    if (answer.ok) {
      // It is known from now on, whether news of it comes or was sent before this page listened.
      known = [...known, ...batch];
      taken += 1;
    }
    // What was refused is said and let go, or it would stand in the way of all that follows.
    kept.waiting = kept.waiting.slice(batch.length);
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

// Whether the network is back is told by the browser, by the news, and at the latest by trying.
window.addEventListener("online", send);
setInterval(send, 5000);
