// The job told in sentences, whose values are the fields. What has no sentence stands below it, a table of the file at a time.

import { el } from "../frame/dom.js";
import { shop } from "../frame/shop.js";
import { field, fieldAt } from "./fields.js";

/** Sentences that speak of the job and its skins. */
export function sentences() {
  const told = new Set();
  const f = (address, label) => {
    told.add(address);
    return field(address, label) ?? el("span", { class: "aside" }, "(not said)");
  };
  const unit = fieldAt("job.units")?.written ?? "";
  const lengthOf = (address) => (/^-?[\d.]+$/.test(fieldAt(address)?.shown ?? fieldAt(address)?.written ?? "") && unit !== "ft-in-8" ? ` ${unit}` : "");
  const length = (address, label) => [f(address, label), lengthOf(address)];
  const paragraphs = [
    el(
      "p",
      {},
      "The job is ", f("job.name", "Name of the job"), ", measured in ", f("job.units", "Unit"),
      ". Its table of offsets is ", f("hull.offsets", "File of the table of offsets"),
      ", to the ", f("hull.offsets-are-to", "Which side of the planking the table is to"), " of the planking.",
    ),
  ];
  for (const table of tables("layer")) {
    const a = (key) => `${table}.${key}`;
    const name = fieldAt(a("name"))?.written ?? `layer ${table.match(/\d+/)[0]}`;
    paragraphs.push(
      fieldAt(a("kind"))?.written === "cloth"
        ? el("p", {}, "Then ", f(a("name"), "Name of the cloth"), ", ", f(a("kind"), "Kind of the layer"), " ",
            length(a("thickness"), `Thickness of ${name}`), " thick.")
        : el(
            "p",
            {},
            "Skin ", f(a("name"), "Name of the skin"), ": planks of ", length(a("width"), `Width of planks, ${name}`), " by ",
            length(a("thickness"), `Thickness, ${name}`), " lie at ", f(a("angle"), `Angle at the keel, ${name}`),
            "° to the keel, heading ", f(a("heads"), `Which way planks head, ${name}`), ", from a master at ",
            length(a("master"), `Place of the master plank, ${name}`), ". They hold their ", f(a("hold"), `What planks hold, ${name}`),
            "; before one is tapered the angle may drift ", f(a("angle-drift"), `Drift of the angle, ${name}`), "°.",
          ),
    );
  }
  for (const edge of ["keel", "chine", "transom", "stem"]) {
    const a = (key) => `ends.${edge}.${key}`;
    if (fieldAt(a("cut"))) {
      paragraphs.push(
        el(
          "p",
          {},
          `At the ${edge} ends are `, f(a("cut"), `Ends at the ${edge}`),
          fieldAt(a("by")) ? [", by ", length(a("by"), `How much longer at the ${edge}`)] : null,
          ".",
        ),
      );
    }
  }
  return { paragraphs, told };
}

/** Every other value, in the order of the file, with what the manual says of it. */
export function others(told, isOpen) {
  const byTable = Map.groupBy(
    shop.state.fields.filter((f) => !told.has(f.address)),
    (f) => f.table.split(".")[0],
  );
  return [...byTable].map(([head, fields]) =>
    el(
      "details",
      { open: isOpen(head), "data-head": head },
      el("summary", {}, `${named(head)} `, el("span", { class: "aside" }, `${fields.filter((f) => f.written !== null).length} more values`)),
      el(
        "dl",
        {},
        fields.map((f) => [
          el("dt", { class: f.written === null ? "leftout" : null }, f.address.slice(head.length + 1)),
          el("dd", {}, field(f.address, f.address), " ", el("span", { class: "aside" }, f.what)),
        ]),
      ),
    ),
  );
}

function named(head) {
  const name = fieldAt(`${head}.name`)?.written;
  return name && head !== "job" ? `${head.replace(/\[\d+\]/, "")} ${name}` : head;
}

function tables(of) {
  return [...new Set(shop.state.fields.map((f) => f.table))].filter((t) => new RegExp(`^${of}\\[\\d+\\]$`).test(t));
}
