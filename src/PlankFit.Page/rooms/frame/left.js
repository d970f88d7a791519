// Tells of notes that this browser keeps and that are not on their way: of another hull, of this one from before its folder was moved, or put aside. They are sent or put aside by
// whoever looks at them, and go away for good only where that is said twice.

import { kept, putAside, takeAway } from "./aside.js";
import { ask, el, show } from "./dom.js";
import { adopt } from "./notes.js";
import { SAWN, adoptSawn } from "./sawing.js";
import { shop, watch } from "./shop.js";

const EVERY = 5000;

/** Of a page that is open, what is about to be sent is none of them: told of once it is seen a second time. */
let before = null,
  served = new Map(),
  shown = "";

const notesOf = (n) => `${n} ${n === 1 ? "note" : "notes"}`;
const count = (group) => group.waiting.length + group.refused.length;
const place = () => document.getElementById("left");

function look() {
  const job = shop.state?.job;
  if (!job) {
    return;
  }
  const all = kept().filter((g) => g.isAside || g.of !== job),
    isFirst = before === null,
    stays = all.filter((g) => g.isAside || isFirst || before.has(g.id));
  before = new Set(all.map((g) => g.id));
  const now = JSON.stringify(stays.map((g) => [g.id, count(g), served.get(g.of)]));
  if (now === shown) {
    return;
  }
  shown = now;
  show(place(), stays.map(line));
}

function line(group) {
  const here = !group.isAside && served.get(group.of),
    of = group.of === shop.state.job ? "of this hull" : group.name ? `of ${group.name}` : "of another hull, or of this one from before its folder was moved,",
    n = count(group),
    one = n === 1;
  return el(
    "p",
    {},
    here
      ? [`${notesOf(n)} of ${here.name} ${one ? "waits" : "wait"} in this browser: `, el("a", { href: here.address }, `open ${here.name}`), `, and ${one ? "it is" : "they are"} sent.`]
      : [
          group.isAside ? `${notesOf(n)} ${of} ${one ? "is" : "are"} put aside in this browser, and ${one ? "is" : "are"} not on the shop's computer. ` : `${notesOf(n)} ${of} ${one ? "waits" : "wait"} in this browser, not sent. `,
          el("button", { click: () => decide(group) }, one ? "Look at it" : "Look at them"),
        ],
  );
}

function words(n) {
  if (n.field === SAWN) {
    return `${n.plank}, ${n.forget ? "not sawn after all" : "sawn"} (${n.at})${n.words ? `. Not taken: ${n.words}` : ""}`;
  }
  const what = n.plank === "" || n.plank === undefined ? n.field : `${n.plank}, ${n.field}`;
  return [`${what}: ${n.value === "" ? "taken back" : n.value}`, n.at ? ` (${n.at})` : "", n.words ? `. Not taken: ${n.words}` : ""].join("");
}

async function decide(group) {
  const it = count(group) === 1 ? "it" : "them",
    name = shop.facts?.name ?? "this hull";
  const answer = await ask(
    [
      el("h2", {}, `${notesOf(count(group))}${group.name ? ` of ${group.name}` : ""}`),
      el("p", {}, group.of === shop.state.job ? `Noted of ${name}.` : `Noted ${group.name ? `of ${group.name}, ` : ""}where it lay at another place on the shop's computer than ${name} does now. Send ${it} only if this is the same hull.`),
      el("ul", { class: "left-notes", tabindex: "0" }, [...group.waiting, ...group.refused].map((n) => el("li", {}, words(n)))),
    ],
    [
      ["send", `Send ${it} to ${name}`],
      group.isAside ? ["delete", `Delete ${it} for good`] : ["aside", `Put ${it} aside`],
      ["", `Leave ${it} as ${it === "it" ? "it is" : "they are"}`],
    ],
  );
  if (answer === "send") {
    adopt({ ...group, waiting: group.waiting.filter((n) => n.field !== SAWN) });
    adoptSawn(group.waiting.filter((n) => n.field === SAWN));
    takeAway(group);
  } else if (answer === "aside" && putAside(group.of, group.waiting, group.refused, group.name)) {
    takeAway(group);
  } else if (answer === "delete" && (await ask([el("h2", {}, `Delete ${notesOf(count(group))} for good?`)], [["", "Keep"], ["delete", "Delete"]])) === "delete") {
    takeAway(group);
  }
  look();
}

async function offered() {
  try {
    served = new Map((await (await fetch("/jobs")).json()).map((j) => [j.id, j]));
  } catch {
    // Told as of a hull that is not served here.
  }
  look();
}

watch((what) => what === "state" && before === null && look());
setInterval(look, EVERY);
offered();
