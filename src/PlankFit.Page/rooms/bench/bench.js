// One plank, for who stands at it.

import { el, show } from "../frame/dom.js";
import { fact, neighbour, pick, shop, watch } from "../frame/shop.js";
import { note, notes } from "../frame/notes.js";
import { inUnits } from "../frame/units.js";
import { markSawn, sawing, sawingCount } from "../frame/sawing.js";
import { at, text } from "../frame/wire.js";

/** The four things that are asked first. */
const FOUR = [
  ["Length to cut", (id) => fact(id, "length to cut")],
  ["Widest", (id) => fact(id, "widest")],
  ["Inboard end", (id) => end(id, "inboard")],
  ["Outboard end", (id) => end(id, "outboard")],
];

function end(id, which) {
  const name = shop.facts.columns.find((c) => c.startsWith(`${which} `))?.replace(/ end at$/, "") ?? which;
  return ["end at", "cut", "angle", "bevel"]
    .map((c) => fact(id, `${name} ${c}`))
    .filter(Boolean)
    .join("; ");
}

export function bench(place) {
  let drawn = "",
    said = "",
    drawnOf = {},
    painted = null;

  function paint() {
    if (!shop.facts) {
      show(place, el("p", {}, "No planks yet."));
      return;
    }
    if (!shop.picked) {
      pick(shop.facts.order[0]);
    }
    const id = shop.picked,
      turn = shop.facts.turn,
      now = JSON.stringify([turn, shop.facts.shownIn, id, shop.state.saved, notes.of.get(id), notes.waiting, notes.told, notes.fault, sawing(id), sawingCount()]);
    if (now === drawn || !id) {
      return;
    }
    const typing = document.activeElement;
    if (typing?.id?.startsWith("note-") && typing.value !== typing.defaultValue && shop.picked === painted) {
      // Somebody is writing: painted when he has done.
      return;
    }
    drawn = now;
    painted = id;
    const story = el("pre", { tabindex: "0" });
    const row = shop.facts.order.indexOf(id);
    drawnOf = { turn, shape: shop.facts.shapes[row] };
    show(
      place,
      el(
        "article",
        { class: "bench" },
        el("p", { class: "number" }, id, el("span", {}, ` ${fact(id, "side")}, ${fact(id, "layer name")}, ${fact(id, "kind")}`)),
        el("div", { class: "card", tabindex: "0", role: "region", "aria-label": `Card of ${id}` }, el("img", { src: at(inUnits(`card/${turn}/${id}`)), alt: `Card of ${id}: its flat shape with dimensions` })),
        el("dl", { class: "four" }, FOUR.map(([name, of]) => el("div", {}, el("dt", {}, name), el("dd", {}, String(of(id) ?? ""))))),
        el("p", { class: "bend" }, `Bend: ${fact(id, "bend")}. ${fact(id, "notes") ?? ""}`),
        el("p", { class: "steps noprint" }, mark(id)),
        el("p", { class: "marked", role: "status" }, [said, notes.told, notes.fault, waiting(id)].filter(Boolean).join(" ")),
        noted(id),
        el(
          "p",
          { class: "steps noprint" },
          el("button", { class: "big", click: () => go(neighbour(-1)) }, `Before: ${neighbour(-1)}`),
          el("button", { class: "big main", click: () => go(neighbour(1)) }, `Next: ${neighbour(1)}`),
        ),
        el(
          "p",
          { class: "noprint" },
          `${row + 1} of ${shop.facts.order.length}, revision ${shop.facts.revision}. `,
          el("a", { href: at(inUnits(`card/${turn}/${id}`)), target: "_blank" }, "The card alone"),
          " ",
          el("button", { click: () => window.print() }, "Print"),
        ),
        el(
          "details",
          {
            class: "noprint",
            toggle: async (event) => {
              if (event.target.open && story.textContent === "") {
                story.textContent = (await text(inUnits(`story/${turn}/${id}`))) ?? "The planks have changed meanwhile.";
              }
            },
          },
          el("summary", {}, "How it came to be"),
          story,
        ),
      ),
    );
    if (typing?.id) {
      document.getElementById(typing.id)?.focus();
    }
  }

  /** The one button for what comes next to this plank; a plank is written down as it is shown, so the job must be saved. */
  function mark(id) {
    const waits = sawing(id),
      done = waits === null ? shop.facts.done[id] : waits.forget ? undefined : "sawn",
      state = notes.of.get(id)?.state;
    if (done) {
      // What is on the hull already is not taken off the record by a slip of the finger.
      const next = { fitted: "glued", glued: "" }[state || (done === "fitted" ? "fitted" : "")] ?? "fitted";
      const steps = [
        el("button", { class: "big main", click: () => note(id, "state", next) }, next === "" ? "Glued. Not after all?" : next === "glued" ? "Glued" : "Fitted"),
      ];
      if (state) {
        steps.push(el("button", { class: "big", click: () => note(id, "state", "") }, "Not fitted after all"));
        return steps;
      }
      if (done === "fitted") {
        return steps;
      }
      return [...steps, unmark(id)];
    }
    if (!done && !shop.state.saved) {
      return el("button", { class: "big", disabled: true }, "Save the job, then mark it sawn");
    }
    return sawn(id, false, "Sawn");
  }

  const unmark = (id) => sawn(id, true, "Sawn. Not after all?");

  function sawn(id, forget, words) {
    return el(
      "button",
      {
        class: forget ? "big" : "big main",
        click: async (event) => {
          event.target.disabled = true;
          said = await markSawn(id, forget, drawnOf);
          drawn = "";
          paint();
        },
      },
      words,
    );
  }

  function waiting(id) {
    const n = notes.waiting + sawingCount(),
      mark = sawing(id);
    return [
      mark === null ? "" : `${mark.forget ? "Not sawn after all" : "Sawn"}, and not written down yet${mark.words ? `: ${mark.words}` : "."}`,
      n === 0 ? "" : `${n} ${n === 1 ? "note waits" : "notes wait"} here to be sent: keep this page open.`,
    ].join(" ").trim();
  }

  /** What was found when the plank was offered up, and anything else. */
  function noted(id) {
    const entry = (field, label) =>
      el(
        "p",
        { class: "entry" },
        el("label", { for: `note-${field}` }, label),
        el("input", {
          id: `note-${field}`,
          type: "text",
          maxlength: "500",
          autocomplete: "off",
          value: notes.of.get(id)?.[field] ?? "",
          change: (event) => {
            event.target.defaultValue = event.target.value;
            note(id, field, event.target.value.trim());
          },
        }),
      );
    return el("div", { class: "noted" }, entry("off", "Out by, when offered up (3 mm short at chine)"), entry("note", "Note"));
  }

  function go(id) {
    said = "";
    location.hash = `#bench/${id}`;
  }

  const forget = watch((what) => {
    if (what === "facts" || what === "picked" || what === "state" || what === "notes") {
      paint();
    }
  });
  paint();
  return forget;
}
