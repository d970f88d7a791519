// One plank, for who stands at it.

import { el, show } from "../frame/dom.js";
import { fact, neighbour, pick, shop, watch } from "../frame/shop.js";
import { at, post, text } from "../frame/wire.js";

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
    said = "";

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
      now = `${turn} ${id} ${shop.state.saved}`;
    if (now === drawn || !id) {
      return;
    }
    drawn = now;
    const story = el("pre", { tabindex: "0" });
    const row = shop.facts.order.indexOf(id);
    show(
      place,
      el(
        "article",
        { class: "bench" },
        el("p", { class: "number" }, id, el("span", {}, ` ${fact(id, "side")}, ${fact(id, "layer name")}, ${fact(id, "kind")}`)),
        el("div", { class: "card", tabindex: "0", role: "region", "aria-label": `Card of ${id}` }, el("img", { src: at(`card/${turn}/${id}`), alt: `Card of ${id}: its flat shape with dimensions` })),
        el("dl", { class: "four" }, FOUR.map(([name, of]) => el("div", {}, el("dt", {}, name), el("dd", {}, String(of(id) ?? ""))))),
        el("p", { class: "bend" }, `Bend: ${fact(id, "bend")}. ${fact(id, "notes") ?? ""}`),
        el("p", { class: "steps noprint" }, mark(id)),
        el("p", { class: "marked", role: "status" }, said),
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
          el("a", { href: at(`card/${turn}/${id}`), target: "_blank" }, "The card alone"),
          " ",
          el("button", { click: () => window.print() }, "Print"),
        ),
        el(
          "details",
          {
            class: "noprint",
            toggle: async (event) => {
              if (event.target.open && story.textContent === "") {
                story.textContent = (await text(`story/${turn}/${id}`)) ?? "The planks have changed meanwhile.";
              }
            },
          },
          el("summary", {}, "How it came to be"),
          story,
        ),
      ),
    );
  }

  /** The one button for what comes next to this plank; a plank is written down as it is shown, so the job must be saved. */
  function mark(id) {
    const done = shop.facts.done[id];
    if (done === "fitted") {
      return el("button", { class: "big", disabled: true }, "Fitted");
    }
    if (!done && !shop.state.saved) {
      return el("button", { class: "big", disabled: true }, "Save the job, then mark it sawn");
    }
    return el(
      "button",
      {
        class: done ? "big" : "big main",
        click: async (event) => {
          event.target.disabled = true;
          const answer = await post("sawn", { plank: id, forget: done === "sawn" });
          said = (answer.told?.words ?? ["The shop's computer did not take it."]).join(" ");
          drawn = "";
          paint();
        },
      },
      done ? "Sawn. Not after all?" : "Sawn",
    );
  }

  function go(id) {
    said = "";
    location.hash = `#bench/${id}`;
  }

  const forget = watch((what) => {
    if (what === "facts" || what === "picked" || what === "state") {
      paint();
    }
  });
  paint();
  return forget;
}
