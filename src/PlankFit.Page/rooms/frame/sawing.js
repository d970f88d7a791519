// Planks that were marked as sawn, or taken off the record, where the shop's computer was out of reach or would not have it yet: kept in this browser, shown as what they are, and sent
// until it has them. A mark says how its plank was drawn on the card, since turns go by meanwhile; to mark a plank twice does nothing.

import { moment } from "./notes.js";
import { changed, shop, watch } from "./shop.js";
import { post } from "./wire.js";

/** As notes are told by what they are of. */
export const SAWN = "sawn";

const EVERY = 5000;

let kept = null,
  sending = false,
  /** The plank whose mark is on its way. */
  going = null;

const key = () => `plankfit sawn ${shop.state.job}`;

/** What another page of this browser has kept or sent meanwhile is in it. */
function read() {
  try {
    kept = JSON.parse(localStorage.getItem(key()))?.waiting ?? [];
  } catch {
    kept ??= [];
  }
  return kept;
}

function keep(list) {
  kept = list;
  try {
    if (list.length > 0) {
      localStorage.setItem(key(), JSON.stringify({ waiting: list, name: shop.facts?.name ?? "" }));
    } else {
      localStorage.removeItem(key());
    }
  } catch {
    // It holds for as long as the page is open.
  }
  changed("notes");
}

/** What waits for a plank: whether it is taken off the record, and why it is not taken yet; null where nothing does. */
export const sawing = (id) => (kept ?? []).find((m) => m.plank === id) ?? null;

export const sawingCount = () => (kept ?? []).length;

/**
 * @param card of its card: the turn, and what it showed
 * @returns what is to be said; what cannot be sent waits
 */
export async function markSawn(id, forget, { turn, shape }) {
  const waits = sawing(id),
    mark = { plank: id, field: SAWN, forget, shape, at: moment() };
  if (waits !== null && waits.forget !== forget) {
    // Taken back before it was sent: the record knows of neither. What is on its way already may be on it: that is taken back there.
    keep([...read().filter((m) => m.plank !== id), ...(going === id ? [mark] : [])]);
    return "";
  }
  const answer = await post("sawn", { plank: id, forget, turn, shape: forget ? null : shape });
  if (answer.code !== 0) {
    return (answer.told?.words ?? ["The shop's computer did not take it."]).join(" ");
  }
  keep([...read().filter((m) => m.plank !== id), mark]);
  return "";
}

/** Takes over what waited for this hull from before its folder was moved. */
export function adoptSawn(list) {
  if (list.length > 0) {
    keep([...read().filter((m) => !list.some((n) => n.plank === m.plank)), ...list]);
    send();
  }
}

async function send() {
  if (sending || !shop.state || read().length === 0) {
    return;
  }
  sending = true;
  // Whatever keeps one of them out keeps out no other.
  for (const mark of [...kept]) {
    const isIt = (m) => m.plank === mark.plank && m.forget === mark.forget;
    if (!read().some(isIt)) {
      // Taken back while those before it were sent.
      continue;
    }
    going = mark.plank;
    const answer = await post("sawn", { plank: mark.plank, forget: mark.forget, shape: mark.forget ? null : mark.shape });
    going = null;
    if (answer.code === 0) {
      break;
    }
    const words = answer.ok ? "" : (answer.told?.words ?? ["The shop's computer did not take it."]).join(" ");
    const now = read(),
      at = now.findIndex(isIt),
      // What is not on the record need not be taken off it.
      isDone = answer.ok || (mark.forget && answer.code === 409 && shop.facts !== null && !shop.facts.done[mark.plank]);
    if (at >= 0 && (isDone || now[at].words !== words)) {
      keep(isDone ? now.toSpliced(at, 1) : now.with(at, { ...mark, words }));
    }
  }
  sending = false;
}

window.addEventListener("online", send);
watch((what) => {
  if (what === "state" && kept === null) {
    read();
    changed("notes");
    send();
  }
});
setInterval(send, EVERY);
