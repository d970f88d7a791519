// A value of the job as a field in a sentence. It is changed by typing, by arrows, and by drawing the finger along it; while it moves all is one step.

import { el } from "../frame/dom.js";
import { shop, watch, wish } from "../frame/shop.js";
import { units } from "../frame/units.js";

let gestures = 0;
const page = crypto.getRandomValues(new Uint32Array(1))[0].toString(36);
export const newGesture = () => `${page}-${++gestures}`;

/** The fields of the state by address, from the same state only once. */
let read = { of: null, fields: new Map() };
export function fieldAt(address) {
  if (read.of !== shop.state) {
    read = { of: shop.state, fields: new Map(shop.state.fields.map((f) => [f.address, f])) };
  }
  return read.fields.get(address) ?? null;
}

/** @param label what the field is called for who does not see the sentence */
export function field(address, label) {
  const of = fieldAt(address);
  if (of === null) {
    return null;
  }
  const id = `field-${address}`;
  const about = [of.what, `It takes ${of.kind}${of.limits ? `, ${of.limits}` : ""}.`, of.usual ? `Left out: ${of.usual}.` : ""]
    .filter(Boolean)
    .join(" ");
  const common = { id, title: about, "aria-label": label, "data-address": address };
  const made = of.sort === "choice" ? choice(of, common) : entry(of, common);
  return el("span", { class: "field" }, made);
}

/** Brings a field that is there already to the newest state, unless somebody is typing in it. */
export function renew(made) {
  const of = fieldAt(made.dataset.address);
  if (of === null) {
    return;
  }
  const now = shownOf(of);
  // What is being typed, and what the hand has moved on while the news of where it was is on its way, stays.
  const typing = made === document.activeElement && made.value !== made.dataset.was;
  if (!typing && !made.dataset.sending && !made.dataset.dragged) {
    made.value = now;
    made.dataset.was = now;
    fit(made);
  }
  const wrong = shop.state.faults.find((f) => new RegExp(`, line ${of.line}\\b`).test(f.words));
  made.toggleAttribute("aria-invalid", Boolean(wrong));
  if (wrong) {
    made.setAttribute("aria-invalid", "true");
  }
}

/** As it stands in the file, or in the units that are shown. */
const shownOf = (of) => of.shown ?? of.written ?? "";

function choice(of, common) {
  const made = el(
    "select",
    { ...common, change: () => send(made, newGesture()) },
    of.written === null || !of.words.includes(of.written) ? el("option", { value: of.written ?? "" }, of.written ?? of.usual ?? "") : null,
    of.words.map((w) => el("option", { value: w }, w)),
  );
  made.value = made.dataset.was = of.written ?? "";
  return made;
}

function entry(of, common) {
  const isNumber = of.sort === "number";
  const made = el("input", {
    ...common,
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    inputmode: isNumber ? "decimal" : null,
    class: isNumber ? "number" : null,
    placeholder: of.usual ?? "as usual",
    change: () => send(made, newGesture()),
    input: () => {
      // Steps go on from what was typed.
      stepped.delete(made.dataset.address);
      fit(made);
    },
    keydown: (event) => {
      if (event.key === "Escape") {
        made.value = made.dataset.was;
        fit(made);
      } else if (isNumber && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
        event.preventDefault();
        step(made, (event.key === "ArrowUp" ? 1 : -1) * (event.shiftKey ? 10 : 1), stepping(made));
      }
    },
    blur: () => {
      delete made.dataset.gesture;
    },
  });
  made.value = made.dataset.was = shownOf(of);
  fit(made);
  if (isNumber) {
    made.addEventListener("pointerdown", (event) => drag(made, event));
  }
  return made;
}

/** All steps until the field is left are one. */
function stepping(made) {
  made.dataset.gesture ??= newGesture();
  return made.dataset.gesture;
}

/** By address, steps that were made where the server words them, and where they began. */
const stepped = new Map();
watch((what) => what === "undone" && stepped.clear());

/**
 * In other units than the file's own what a step is, and how it is written, is the server's to know. Steps are counted from where they began, since the answer comes later than
 * the next one, and until what is shown is no older than the last of them, though the field was left or made anew meanwhile.
 */
function stepOnServer(made, by, gesture, from) {
  const { address } = made.dataset;
  let now = stepped.get(address);
  if (!now || made.dataset.dragged !== undefined || (now.gesture !== gesture && now.waiting === 0 && shop.state.turn >= shop.asked)) {
    now = { base: from, steps: 0, waiting: 0 };
    stepped.set(address, now);
  }
  now.gesture = gesture;
  now.steps += by;
  now.waiting += 1;
  wish({ address, typed: now.base, by: now.steps, units: units.shown, gesture }).then(() => {
    now.waiting -= 1;
  });
}

/** By so many of the last digit that is shown: 45 by ones, 7.5 by tenths. */
function step(made, by, gesture, from = made.value) {
  if (fieldAt(made.dataset.address)?.shown) {
    stepOnServer(made, by, gesture, from);
    return;
  }
  const match = from.match(/^(\D*?)(-?\d+(?:\.(\d+))?)(.*)$/s);
  if (!match || by === 0) {
    return;
  }
  const digits = match[3]?.length ?? 0;
  const now = (Number(match[2]) + by * 10 ** -digits).toFixed(digits);
  made.value = match[1] + now + match[4];
  fit(made);
  send(made, gesture);
}

function drag(made, down) {
  if (made === document.activeElement) {
    return;
  }
  // Counted from where the hand began: what comes from the server meanwhile takes no step away.
  const from = down.clientX,
    began = made.value,
    gesture = newGesture();
  let last = 0,
    moved = false;
  const move = (event) => {
    const steps = Math.trunc((event.clientX - from) / 6);
    if (steps !== last) {
      moved = true;
      last = steps;
      made.dataset.dragged = "";
      if (steps === 0) {
        made.value = began;
        fit(made);
        send(made, gesture);
      } else {
        step(made, steps, gesture, began);
      }
    }
  };
  const up = () => {
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", up);
    delete made.dataset.dragged;
    if (moved) {
      made.blur();
    }
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", up);
}

async function send(made, gesture) {
  if (made.value === made.dataset.was || (made.value.trim() === "" && made.dataset.was === "")) {
    return;
  }
  const typed = made.value;
  made.dataset.was = typed;
  made.dataset.sending = Number(made.dataset.sending ?? 0) + 1;
  const shown = units.shown ? { units: units.shown } : {};
  const wrong = await wish({ address: made.dataset.address, typed, gesture, ...shown }, () => made.dataset.was === typed);
  if (made.dataset.sending === "1") {
    delete made.dataset.sending;
  } else {
    made.dataset.sending -= 1;
  }
  made.setCustomValidity(wrong ?? "");
  if (wrong) {
    made.setAttribute("aria-invalid", "true");
    made.reportValidity();
  }
}

/** As wide as what stands in it. */
function fit(made) {
  if (made.tagName === "INPUT") {
    made.size = Math.max(2, Math.min(40, (made.value || made.placeholder).length));
  }
}
