// What all rooms look at: the newest state, the facts of what is laid, what is picked and how it is coloured. Rooms are told when any of it changes.

import { inUnits, units } from "./units.js";
import { inTurn, json, post } from "./wire.js";

export const shop = {
  state: null,
  facts: null,
  /** Planks that are laid, of which no more is known yet than which there are. */
  skins: null,
  /** What is to be seen: the newest planks. */
  get shown() {
    return this.skins !== null && this.skins.turn > (this.facts?.turn ?? 0) ? this.skins : this.facts;
  },
  picked: null,
  /** The page loads itself anew: what waits in it is kept by the browser and sent by what comes, so that nobody need be asked. */
  isLeaving: false,
  colour: "layer",
  hidden: new Set(),
  /** The seams of the skin below are seen through the one above. */
  ghost: false,
  /** By plank the boards that it comes out of; null where no plan of cutting is known of what is laid. */
  boards: null,
  /** A place along the hull that is pointed at: x in mm, as the tables have it, and what it is. */
  place: null,
  /** Of what may be shown besides planks, what to add to the job where it is not there. */
  lacking: null,
  /** The newest turn whose planks are there, perhaps not fetched yet. */
  coming: 0,
  /** The newest turn that an answer to a wish of this page has told of; the state may be behind it yet. */
  asked: 0,
  /** The hand moves, or what is laid is not fetched yet: what is shown may be behind. */
  get isBehind() {
    return this.state !== null && (this.state.tried !== this.state.turn || (this.facts !== null && this.facts.turn !== this.state.laid));
  },
};

const watchers = new Set();

export function watch(watcher) {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
}

/** @param what of "state", "coming", "planks", "facts", "picked", "colour", "undone" */
export function changed(what) {
  for (const watcher of [...watchers]) {
    watcher(what);
  }
}

export function pick(id) {
  if (shop.picked !== id) {
    shop.picked = id;
    changed("picked");
  }
}

/** The plank so many places further in the list; the first where none is picked. */
export function neighbour(by) {
  const order = shop.facts?.order ?? [];
  if (order.length === 0) {
    return null;
  }
  const here = order.indexOf(shop.picked);
  return here < 0 ? order[0] : order[(here + by + order.length) % order.length];
}

/** What the list of planks has of one, by the name of the column. */
export function fact(id, column) {
  const row = shop.facts.order.indexOf(id),
    place = shop.facts.columns.indexOf(column);
  return row < 0 || place < 0 ? null : shop.facts.planks[row][place];
}

/** Fetches planks that are there before the rest of them. */
export async function early(turn) {
  shop.coming = turn;
  changed("coming");
  const skins = await json(`skins/${turn}`);
  // What comes late, and is of planks that all is known of by now, or whose rest was refused, is not put before what is.
  const isOver = skins !== null && (skins.turn <= (shop.facts?.turn ?? 0) || (shop.state.tried >= skins.turn && shop.state.laid !== skins.turn));
  if (skins !== null && shop.facts !== null && !isOver && skins.turn > (shop.skins?.turn ?? 0)) {
    shop.skins = skins;
    changed("planks");
  }
}

/** What did not come is asked for again after so long, and each time after twice as long, ms. */
const SOON = 1000,
  LATE = 32000;

let again = SOON,
  timer = 0;

/** Fetches the newest state, and the facts where other planks are laid. One at a time: who asks meanwhile has it asked once more. */
export const refresh = inTurn(async () => {
  clearTimeout(timer);
  if (await fetchAll()) {
    again = SOON;
  } else if (!shop.isLeaving) {
    // No news need come any more that would have it fetched.
    timer = setTimeout(refresh, again);
    again = Math.min(LATE, 2 * again);
  }
});

/** @returns whether all came that is there */
async function fetchAll() {
  const state = await json(inUnits("state"));
  if (state === null) {
    return false;
  }
  if (shop.state && shop.state.epoch !== state.epoch) {
    // Another run of the server: nothing that is shown here belongs to it but the plank in the address.
    shop.isLeaving = true;
    location.reload();
    return true;
  }
  shop.state = state;
  changed("state");
  if (shop.skins !== null && state.tried >= shop.skins.turn && state.laid !== shop.skins.turn) {
    // Planks whose rest was refused.
    shop.skins = null;
    changed("facts");
  }
  // In which units they were asked for is known of each answer: one that was on its way when others were chosen is not taken for theirs.
  const shownIn = units.shown;
  if (state.laid !== null && (state.laid !== shop.facts?.turn || shownIn !== shop.facts.shownIn)) {
    const facts = await json(inUnits(`facts/${state.laid}`));
    if (facts !== null) {
      shop.facts = { ...facts, shownIn };
      shop.skins = null;
      if (!facts.order.includes(shop.picked)) {
        shop.picked = null;
      }
      changed("facts");
    }
    return facts !== null;
  }
  return true;
}

let before = Promise.resolve();

/**
 * Asks for a change; gives what was wrong with it, or null. One after the other, since two on their way at once may come in turned about.
 *
 * @param stands whether it is still wanted when its turn comes; what the hand has passed over meanwhile is not sent
 */
export function wish(what, stands = () => true) {
  const mine = before.then(async () => {
    if (!stands()) {
      return null;
    }
    const answer = await post("wish", what);
    shop.asked = Math.max(shop.asked, answer.told?.turn ?? 0);
    if (what.undo || what.redo) {
      changed("undone");
    }
    return answer.ok ? null : (answer.told?.message ?? "The shop's computer did not take it.");
  });
  before = mine;
  return mine;
}
