// What is to be tried, as fields: ranges with their units and limits, the layers, what lay-outs are held against each other by. What was typed outlives the room.

import { el, show } from "../frame/dom.js";
import { shop } from "../frame/shop.js";

const RANGES = [
  ["angle", "Angle at the keel", "40..50"],
  ["width", "Width of the stock", "100,120,150"],
  ["master", "Place of the master plank", ""],
];

const typed = { angle: "", width: "", master: "", heads: "", boards: "", along: "planks", up: "waste", layers: new Set(), by: new Set() };

/** How what is found is to be looked at: by what it is held against each other, and what the chart shows. */
export function seen() {
  return new URLSearchParams({ by: [...typed.by].join(","), along: typed.along, up: typed.up });
}

/**
 * @param start given what is asked, to be sent as it is
 * @param look called where what is found is to be looked at otherwise
 */
export function asking(start, look) {
  const ranges = el("div", { class: "ranges" }),
    layers = el("div"),
    by = el("div"),
    axes = el("p"),
    go = el("button", { class: "main", type: "submit" }, "Lay and compare");
  const made = el(
    "form",
    {
      submit: (event) => {
        event.preventDefault();
        start(asked());
      },
    },
    el(
      "p",
      { id: "others-how" },
      "Values with commas between them, 100,120,150; a run, 40..50; a run with its step, 40..50:2. What is left empty stays as it is. Each lay-out is laid and judged as the job itself.",
    ),
    ranges,
    layers,
    el("details", {}, el("summary", {}, "What they are held against each other by"), by, axes),
    el("p", {}, go),
  );

  function asked() {
    const whole = (name) => (typed[name].trim() === "" ? null : typed[name].trim());
    const of = skins();
    const chosen = of.filter((s) => typed.layers.has(s.name));
    return {
      angle: whole("angle"),
      width: whole("width"),
      master: whole("master"),
      heads: whole("heads"),
      layers: chosen.length === 0 || chosen.length === of.length ? [] : chosen.map((s) => s.name),
      boards: /^\d+$/.test(typed.boards.trim()) ? Number(typed.boards) : null,
    };
  }

  /** The layers of planks, from the inside out. */
  function skins() {
    const tables = Map.groupBy(
      (shop.state?.fields ?? []).filter((f) => /^layer\[\d+\]$/.test(f.table)),
      (f) => f.table,
    );
    return [...tables].flatMap(([, fields], n) => {
      const of = (name) => fields.find((f) => f.name === name);
      return of("kind")?.written === "cloth" ? [] : [{ name: of("name")?.written ?? `layer ${n + 1}`, of }];
    });
  }

  let shownOf = "";

  /** The fields anew where the job has other layers or other values; what is typed stays. */
  function refresh() {
    const of = skins();
    const now = JSON.stringify(of.map((s) => [s.name, ...RANGES.map(([key]) => s.of(key)?.written), s.of("heads")?.written]));
    if (now === shownOf || of.length === 0) {
      return;
    }
    const focus = document.activeElement?.id;
    shownOf = now;
    const stands = (key) => [...new Set(of.map((s) => s.of(key)?.written ?? s.of(key)?.usual ?? "as usual"))].join(", ");
    show(
      ranges,
      RANGES.map(([key, label, example]) => entry(key, label, example, of[0].of(key), `now ${stands(key)}`)),
      el(
        "p",
        {},
        el("label", { for: "others-heads" }, "Which way planks head"),
        el(
          "select",
          { id: "others-heads", change: (event) => (typed.heads = event.target.value) },
          [["", `as it is, ${stands("heads")}`], ["aft,forward", "both ways"], ["aft", "aft"], ["forward", "forward"]].map(([value, words]) =>
            el("option", { value, selected: value === typed.heads }, words),
          ),
        ),
        of.length > 1 ? el("span", { class: "aside" }, "of the first layer; the others go on crossing it") : null,
      ),
    );
    show(
      layers,
      of.length < 2
        ? null
        : el(
            "fieldset",
            {},
            el("legend", {}, "Layers that are changed; all where none is marked"),
            of.map((s) => tick(`layer-${s.name}`, s.name, typed.layers, s.name)),
          ),
    );
    if (focus) {
      document.getElementById(focus)?.focus();
    }
  }

  function entry(key, label, example, field, stands) {
    const help = `others-${key}-help`,
      units = shop.state.fields.find((f) => f.address === "job.units")?.written;
    return el(
      "p",
      {},
      el("label", { for: `others-${key}` }, label),
      el("input", {
        id: `others-${key}`,
        type: "text",
        autocomplete: "off",
        spellcheck: "false",
        placeholder: example,
        value: typed[key],
        "aria-describedby": help,
        title: field?.what ?? "",
        input: (event) => (typed[key] = event.target.value),
      }),
      el("span", { class: "aside", id: help }, [stands, field ? `${field.kind}${field.kind === "length" && units ? ` in ${units}, or with its own unit` : ""}${field.limits ? `, ${field.limits}` : ""}` : null].filter(Boolean).join("; ")),
    );
  }

  function tick(id, words, set, value) {
    return el(
      "label",
      { class: "tick" },
      el("input", {
        type: "checkbox",
        id: `others-${id}`,
        checked: set.has(value),
        change: (event) => {
          event.target.checked ? set.add(value) : set.delete(value);
          look();
        },
      }),
      words,
    );
  }

  let measuresOf = "";

  function renew(measures, isBusy) {
    go.disabled = isBusy;
    const hasStock = (shop.state?.fields ?? []).some((f) => f.table === "nest");
    const now = JSON.stringify([measures, hasStock]);
    if (now === measuresOf) {
      return;
    }
    measuresOf = now;
    const shown = measures.filter((m) => hasStock || m.name !== "boards");
    show(
      by,
      el(
        "fieldset",
        {},
        el("legend", {}, "All where none is marked"),
        shown.map((m) => tick(`by-${m.name}`, m.head, typed.by, m.name)),
      ),
      hasStock
        ? el(
            "p",
            {},
            el("label", { for: "others-boards" }, "Rounds of a plan of cutting for each, slow"),
            el("input", { id: "others-boards", type: "text", inputmode: "numeric", value: typed.boards, placeholder: "none", input: (event) => (typed.boards = event.target.value) }),
          )
        : null,
    );
    const axis = (name, label) => [
      el("label", { for: `others-${name}` }, label),
      el(
        "select",
        { id: `others-${name}`, change: (event) => { typed[name] = event.target.value; look(); } },
        shown.map((m) => el("option", { value: m.name, selected: m.name === typed[name] }, m.head)),
      ),
    ];
    show(axes, axis("along", "Along the chart"), " ", axis("up", "and up it"));
  }

  refresh();
  return { made, refresh, renew };
}
