// The master plank moved by hand: a band across it that is drawn along the middle of the bottom. Where it is asked for and where it was laid are both shown, since the
// search for good corners may lay it elsewhere. What it does is a change of the job's text as any other, all of one movement one step.

import { el, show, svg } from "../frame/dom.js";
import { shop, wish } from "../frame/shop.js";
import { inUnits, units } from "../frame/units.js";
import { json } from "../frame/wire.js";
import { fieldAt, newGesture } from "./fields.js";

/** Steps by the arrow keys, mm. */
const STEP = 10,
  FINE = 1;

/** @param sheet over which it is laid; `stage` is what holds both */
export function masterHandle(stage, sheet, sight) {
  const drawing = svg("svg", { class: "master-lines", "aria-hidden": "true" });
  const grip = el("div", {
    class: "master-grip",
    role: "slider",
    tabindex: "0",
    "aria-label": "Place of the master plank along the hull",
    keydown: keys,
    pointerdown: drag,
    blur: () => {
      gesture = null;
      hand = isReturning ? hand : null;
      draw();
    },
  });
  const told = el("p", { class: "master-told" });
  const box = el("div", { class: "master" }, drawing, grip);
  let masters = { turn: 0, of: [] },
    asking = false,
    isOn = false,
    gesture = null,
    began = null,
    hand = null,
    origin = null,
    isReturning = false,
    project = null;

  /** Of the plank that is picked, else of the outermost skin that is seen. */
  function master() {
    const layer = shop.shown?.runs.find((r) => r.planks.includes(shop.picked))?.layer;
    return (
      masters.of.find((m) => m.layer === layer && !shop.hidden.has(m.layer)) ??
      masters.of.findLast((m) => !shop.hidden.has(m.layer))
    );
  }

  function turnOn(on, projecting) {
    isOn = on;
    project = projecting ?? project;
    if (!isOn || !project) {
      box.remove();
      told.remove();
      return;
    }
    stage.append(box);
    stage.after(told);
    fetchIt();
  }

  async function fetchIt() {
    const turn = shop.shown?.turn;
    if (!isOn || asking || !turn || (masters.turn === turn && masters.units === units.shown)) {
      draw();
      return;
    }
    asking = true;
    const of = await json(inUnits(`masters/${turn}`)).catch(() => null);
    asking = false;
    if (of !== null) {
      masters = { turn, units: units.shown, of };
      // What the hand asked for has come: from here on it is what the job says.
      if (!began && hand !== null && Math.abs((master()?.askedX ?? hand) - hand) < 1) {
        hand = null;
        isReturning = false;
      }
    }
    draw();
    if (shop.shown?.turn !== turn) {
      fetchIt();
    }
  }

  /** The side that is looked at; the other is its mirror image. */
  const seen = ([x, y, z]) => [x, Math.abs(sight.turned) > 90 ? -y : y, z];

  /** Where x is on the line along which it moves. */
  function onMiddle(m, x) {
    const line = m.middle;
    const next = Math.max(1, Math.min(line.length - 1, line.findIndex((p) => p[0] >= x)));
    const [a, b] = [line[next - 1], line[next]];
    const part = (x - a[0]) / (b[0] - a[0]);
    return a.map((v, i) => v + part * (b[i] - v));
  }

  function draw() {
    const m = isOn ? master() : null;
    box.hidden = !m || !project?.(m.middle[0]);
    if (box.hidden) {
      return;
    }
    const points = (line, moved = [0, 0, 0]) =>
      line.map((p) => project(seen(p.map((v, i) => v + moved[i])))).map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
    const asked = hand ?? m.askedX;
    const at = project(seen(onMiddle(m, asked)));
    const by = onMiddle(m, asked).map((v, i) => v - onMiddle(m, m.laidX)[i]);
    show(
      drawing,
      svg("polyline", { class: "middle", points: points(m.middle) }),
      began ? svg("polyline", { class: "old", points: points(began.across) }) : null,
      svg("polyline", { class: "laid", points: points(m.across) }),
      svg("polyline", { class: "band", points: points(m.across, by) }),
      Math.abs(asked - m.laidX) > 0.05 ? svg("polyline", { class: "asked", points: points(m.across, by) }) : null,
    );
    grip.style.left = `${at[0]}px`;
    grip.style.top = `${at[1]}px`;
    const [from, to] = [m.middle[0][0], m.middle.at(-1)[0]];
    grip.setAttribute("aria-valuemin", Math.round(from));
    grip.setAttribute("aria-valuemax", Math.round(to));
    grip.setAttribute("aria-valuenow", Math.round(asked));
    // In the words of the job's own file; what is laid follows a moment later.
    const words = `asked ${fieldAt(m.address)?.shown ?? fieldAt(m.address)?.written ?? m.asked}`;
    const isNew = masters.turn === shop.state?.turn && hand === null;
    const where = !isNew ? `${words}, being laid` : m.why ? `${words}, laid ${m.laid}: ${m.why}` : `${words}, laid there`;
    grip.setAttribute("aria-valuetext", `Skin ${m.layer}, ${where}`);
    told.classList.remove("fault");
    told.textContent = `Master of skin ${m.layer}, ${m.plank}: ${where}.`;
  }

  function to(x, m) {
    const held = Math.max(m.middle[0][0], Math.min(m.middle.at(-1)[0], x));
    hand = held;
    isReturning = false;
    draw();
    const mine = held;
    return wish({ address: m.address, x: held, gesture }, () => hand === mine).then((wrong) => {
      if (wrong) {
        told.classList.add("fault");
        told.textContent = wrong;
      }
    });
  }

  function drag(down) {
    const m = master();
    if (!m) {
      return;
    }
    down.preventDefault();
    down.stopPropagation();
    grip.focus();
    grip.setPointerCapture(down.pointerId);
    gesture = newGesture();
    began = m;
    origin = hand ?? m.askedX;
    let moved = false;
    const move = (event) => {
      const frame = sheet.getBoundingClientRect();
      const x = nearest(m, [event.clientX - frame.left, event.clientY - frame.top]);
      if (x !== null && Math.abs(x - (hand ?? m.askedX)) >= 1) {
        moved = true;
        to(x, m);
      }
    };
    const end = (event) => {
      grip.removeEventListener("pointermove", move);
      for (const kind of ["pointerup", "pointercancel", "master-return"]) {
        grip.removeEventListener(kind, end);
      }
      if (event.type !== "pointerup" && moved) {
        back();
      }
      began = null;
      fetchIt();
    };
    grip.addEventListener("pointermove", move);
    for (const kind of ["pointerup", "pointercancel", "master-return"]) {
      grip.addEventListener(kind, end);
    }
  }

  /** The x whose place on the line is drawn nearest to the hand. */
  function nearest(m, [px, py]) {
    const at = m.middle.map((p) => project(seen(p)));
    let best = null,
      least = Infinity;
    for (let i = 1; i < at.length; i++) {
      const [a, b] = [at[i - 1], at[i]];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const part = Math.max(0, Math.min(1, ((px - a[0]) * dx + (py - a[1]) * dy) / Math.max(1e-9, dx * dx + dy * dy)));
      const off = Math.hypot(a[0] + part * dx - px, a[1] + part * dy - py);
      if (off < least) {
        least = off;
        best = m.middle[i - 1][0] + part * (m.middle[i][0] - m.middle[i - 1][0]);
      }
    }
    return best === null ? null : Math.round(best);
  }

  /** Where it was before the movement; what is known of the job is of the movement still, until it has been laid again. */
  function back() {
    const ended = gesture;
    gesture = null;
    hand = origin;
    isReturning = true;
    draw();
    // Where nothing came of the movement, or somebody else's step came after, there is none of it to take back.
    wish({ undo: true, gesture: ended });
  }

  function keys(event) {
    if (event.key === "Escape") {
      event.preventDefault();
      if (began) {
        grip.dispatchEvent(new Event("master-return"));
      } else if (gesture) {
        back();
      }
      return;
    }
    const m = master();
    const way = { ArrowRight: 1, ArrowLeft: -1, ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!way || !m || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    const from = hand ?? m.askedX;
    if (gesture === null) {
      gesture = newGesture();
      origin = from;
    }
    // To the right is to the right as it is seen.
    const [a, b] = [from - 1, from + 1].map((x) => project(seen(onMiddle(m, x))));
    const right = event.key.startsWith("ArrowU") || event.key.startsWith("ArrowD") ? Math.sign(a[1] - b[1]) : Math.sign(b[0] - a[0]);
    to(Math.round(from) + way * (right || 1) * (event.shiftKey ? FINE : STEP), m);
  }

  return {
    turnOn,
    draw,
    fetch: fetchIt,
    get isOn() {
      return isOn;
    },
  };
}
