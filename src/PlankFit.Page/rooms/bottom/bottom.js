import { el, show } from "../frame/dom.js";
import { changed, fact, neighbour, pick, shop, watch } from "../frame/shop.js";
import { colouring, ways } from "./colours.js";
import { renew } from "./fields.js";
import { partsChooser, partsLegend } from "./parts.js";
import { picture } from "./picture.js";
import { run, toBench } from "./run.js";
import { others, sentences } from "./sentences.js";

/** Sentences beside one picture, under it the run. */
export function bottom(place) {
  const words = el("section", { class: "words", "aria-label": "The job in sentences" });
  const view = el("section", { class: "view", "aria-label": "Picture" });
  const rows = el("section", { class: "rows", "aria-label": "The run of planks" });
  const foot = el("div", { class: "foot noprint" });
  show(place, el("div", { class: "bottom" }, words, view, rows), foot);

  const skins = el("fieldset", { class: "skins" }, el("legend", {}, "Skins shown"));
  const by = el(
    "select",
    {
      id: "colour-by",
      change: () => {
        shop.colour = by.value;
        changed("colour");
      },
    },
    ways.map(([way, name]) => el("option", { value: way }, name)),
  );
  by.value = shop.colour;
  const image = picture(view);
  const legend = el("ul", { class: "legend", "aria-label": "What the colours mean" });
  view.append(
    el(
      "div",
      { class: "tools" },
      el("label", { for: "colour-by" }, "Colour by "), by,
      el("button", { class: "noprint", click: () => image.upside() }, "Other way up"),
      el("button", { class: "noprint", click: () => image.home() }, "As first seen"),
      el("button", { class: "noprint", click: () => image.zoom(1.25), "aria-label": "Nearer" }, "+"),
      el("button", { class: "noprint", click: () => image.zoom(0.8), "aria-label": "Farther" }, "−"),
      skins,
    ),
    legend,
  );
  const besides = partsChooser(
    () => image.besides().then(paint),
    (on) => image.movesMaster(on),
  );
  const line = run(rows);
  const picked = el("div", { class: "picked", id: "picked" });
  const found = el("section", { class: "found", "aria-label": "What a person should know" });
  rows.append(picked, found);

  let shape = "";

  /** Fields stay the same elements while the job has the same ones, so that none is taken from under the hand. */
  function tell() {
    const now = shop.state.fields.map((f) => `${f.address}=${f.sort === "choice" || f.written === null}`).join("\n");
    if (now === shape) {
      words.querySelectorAll("[data-address]").forEach(renew);
      return;
    }
    shape = now;
    const open = new Set([...words.querySelectorAll("details[open]")].map((d) => d.dataset.head));
    const focused = document.activeElement?.id;
    const { paragraphs, told } = sentences();
    show(
      words,
      el("h2", {}, "The job"),
      shop.state.fields.length === 0 ? el("p", {}, "The job cannot be read: see what is said above.") : null,
      paragraphs,
      el("h2", {}, "All else that it says"),
      others(told, (head) => open.has(head)),
    );
    words.querySelectorAll("[data-address]").forEach(renew);
    if (focused?.startsWith("field-")) {
      document.getElementById(focused)?.focus();
    }
  }

  function paint() {
    if (!shop.facts) {
      return;
    }
    show(
      skins,
      el("legend", {}, "Skins shown"),
      [...new Map(shop.facts.runs.map((r) => [r.layer, r.name]))].map(([layer, name]) =>
        el(
          "label",
          {},
          el("input", {
            type: "checkbox",
            checked: !shop.hidden.has(layer),
            change: (event) => {
              shop.hidden[event.target.checked ? "delete" : "add"](layer);
              image.paint();
            },
          }),
          ` ${layer} ${name}`,
        ),
      ),
    );
    image.paint();
    line.paint();
    besides.tell();
    show(
      legend,
      [...colouring().legend, ...(image.hasParts() ? partsLegend() : [])].map(([colour, meaning, shape = ""]) => {
        const patch = el("span", { class: `patch ${shape}`, "aria-hidden": "true" });
        patch.style.backgroundColor = colour;
        return el("li", {}, patch, meaning);
      }),
    );
    show(
      found,
      el("details", {}, el("summary", {}, `${shop.facts.findings.length} things to know, gravest first`),
        el("ol", {}, shop.facts.findings.map((f) => el("li", {}, el("b", {}, f.rank), " ", plankLink(f), f.words)))),
      el("details", { open: true }, el("summary", {}, "In numbers"), shop.facts.summary.map((s) => el("p", {}, s))),
    );
    tellPicked();
  }

  function plankLink(finding) {
    return finding.plank ? el("button", { class: "link", click: () => pick(finding.plank) }, "show") : null;
  }

  function tellPicked() {
    if (!shop.facts) {
      return;
    }
    const id = shop.picked;
    show(
      picked,
      id
        ? [
            el("h2", {}, id),
            el("p", {}, ["kind", "length to cut", "widest", "bend"].map((c) => fact(id, c)).filter((w) => w !== null).join(", "), ". ", shop.boards?.[id] ? `Out of ${shop.boards[id]}. ` : "", fact(id, "notes") ?? ""),
            el("p", {}, el("a", { href: `#bench/${id}` }, `${id} at the bench`)),
          ]
        : el("p", { class: "aside" }, "Touch a plank, or step along the run with the arrow keys."),
    );
    show(
      foot,
      el("button", { click: () => pick(neighbour(-1)) }, "Before"),
      el("button", { class: "main", disabled: !id, click: toBench }, id ? `${id} at the bench` : "No plank picked"),
      el("button", { click: () => pick(neighbour(1)) }, "Next"),
    );
  }

  const forget = watch((what) => {
    if (what === "state") {
      tell();
    } else if (what === "coming") {
      image.coming();
    } else if (what === "planks") {
      image.paint();
      line.paint();
    } else if (what === "facts" || what === "colour" || (what === "notes" && shop.colour === "progress")) {
      paint();
    } else if (what === "picked") {
      image.mark();
      line.mark();
      tellPicked();
    }
  });
  if (shop.state) {
    tell();
  }
  paint();
  import("/rooms/solid/solid.js").then(
    (solid) => {
      if (solid.canDraw()) {
        image.drawnBy(solid.drawer);
        legend.before(besides.box, besides.lacks);
      } else {
        view.append(el("p", { class: "aside noprint" }, solid.why));
      }
    },
    // The shop's computer went out of reach before it was fetched.
    () => view.append(el("p", { class: "aside noprint" }, "Drawn flat: the view in the round could not be fetched; enter this room again.")),
  );
  return forget;
}
