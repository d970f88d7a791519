// Cloth, coats over it, fairing and fillets, a side each, to be marked as laid by whoever has laid them, with the hour: what is still to be laid is planned from there on. Marks are
// notes of the job's journal, as those of planks are: kept here until the shop's computer has them.

import { el, show } from "../frame/dom.js";
import { moment, note, notes } from "../frame/notes.js";
import { shop, watch } from "../frame/shop.js";
import { inUnits } from "../frame/units.js";
import { json } from "../frame/wire.js";

const LAID = "laid ";

export function laying(into) {
  let isHere = true,
    read = null,
    asked = "";
  /** By the name of a part its row. */
  const rows = new Map();
  const told = el("p", { class: "laying-told", role: "status" });
  const list = el("ol", { class: "parts" });
  const box = el("section", { class: "laying", "aria-label": "What is laid so far", hidden: true }, told, list);
  show(into, box);

  async function look() {
    const turn = shop.facts?.turn,
      now = `${turn}`;
    // What is marked is shown whether the newest plan can be had or not.
    paint();
    if (!turn || asked === now) {
      return;
    }
    asked = now;
    const got = await json(inUnits(`laying/${turn}`));
    if (!isHere || asked !== now) {
      return;
    }
    if (got === null) {
      asked = "";
      return;
    }
    read = got;
    for (const name of [...rows.keys()].filter((n) => !read.parts.some((p) => p.name === n))) {
      rows.get(name).box.remove();
      rows.delete(name);
    }
    read.parts.forEach((part) => {
      if (!rows.has(part.name)) {
        rows.set(part.name, row(part.name));
      }
      rows.get(part.name).part = part;
    });
    // What stands in its order already is not moved: a field that is typed in would lose its hand.
    const order = read.parts.map((p) => rows.get(p.name).box);
    if (order.some((b, i) => list.children[i] !== b)) {
      show(list, order);
    }
    paint();
  }

  /** When it was laid by the notes, as a field of day and hour has it; empty where it was not, null where they say nothing of it. */
  function markOf(name) {
    const state = notes.of.get(name)?.state;
    return state === undefined ? null : state.startsWith(LAID) ? state.slice(LAID.length).replace(" ", "T") : "";
  }

  /** Its name, how it stands, and one button, as high laid as not: what lies below does not move from under a thumb. */
  function row(name) {
    const words = el("p", { class: "part-words" }),
      said = el("p", { class: "verdict" }),
      doing = el("div", { class: "part-doing" });
    const made = { part: null, box: el("li", { class: "part", "data-part": name }, words, said, doing), paint: () => {} };
    let shape = "",
      isOpen = false,
      typedSo = null;
    const input = el("input", {
      type: "datetime-local",
      id: `laid-${name.replace(/[^A-Za-z0-9]+/g, "-")}`,
      input: () => {
        typedSo = input.value;
      },
      // Taken when the hand leaves it: hours are typed a figure at a time, and each would be a time by itself.
      blur: () => typed(),
      keydown: (event) => event.key === "Enter" && typed(),
    });
    function typed() {
      const at = typedSo?.slice(0, 16) ?? "";
      typedSo = null;
      if (at !== "" && at !== markOf(name)) {
        note(name, "state", LAID + at.replace("T", " "));
      } else {
        paint();
      }
    }
    function mark(state) {
      isOpen = false;
      note(name, "state", state);
    }
    function open(to) {
      isOpen = to;
      paint();
    }
    const button = (kind, does, shown, told) => el("button", { class: kind, click: does, "aria-label": `${made.part.words}: ${told}` }, shown);
    made.paint = (isNext) => {
      const { part } = made,
        at = markOf(name),
        isLaid = at !== null && at !== "",
        elsewhere = !isLaid && part.laid !== "" && !part.taken && read.source === "progress.csv";
      if (words.textContent !== part.words) {
        words.textContent = part.words;
      }
      isOpen &&= isLaid;
      const now = isOpen ? "open" : isLaid ? "laid" : "no";
      made.box.dataset.kind = isLaid || elsewhere ? "laid" : "";
      if (now !== shape) {
        shape = now;
        // The button that was pressed is gone: what takes its place has the hand.
        const hand = doing.contains(document.activeElement);
        input.setAttribute("aria-label", `${part.words}: laid at`);
        show(
          doing,
          isOpen
            ? [
                el("label", { for: input.id }, "Laid at"),
                input,
                button("", () => open(false), "That is right", "that is right"),
                button("", () => mark(""), "Not laid after all", "not laid after all"),
              ]
            : isLaid ? button("", () => open(true), "Another hour, or not laid", "another hour, or not laid")
            : button("", () => mark(LAID + moment()), "Laid now", "laid now"),
        );
        if (hand) {
          doing.querySelector("input, button")?.focus();
        }
      }
      // The same button: one that was put in its place under a thumb would not be pressed.
      doing.firstElementChild.classList.toggle("main", !isLaid && isNext);
      // What somebody is typing stays; who has not begun to sees what is there.
      if (isLaid && typedSo === null && input.value !== at) {
        input.value = at;
      }
      const verdict = [
        isLaid ? `✓ laid ${at.replace("T", " ")}` : "",
        notes.late.has(name) ? "… not sent yet" : "",
        elsewhere ? `✓ laid by ${read.source}: ${part.laid}` : "",
        !isLaid && part.taken ? `? taken as laid by ${part.laid}, since what lies over it is on: mark it, with its hour` : "",
        isLaid && read.source === "progress.csv" && !part.laid ? "the plan goes by progress.csv, which lacks it" : "",
        !isLaid && !elsewhere && part.planned ? `planned ${part.planned}` : "",
      ]
        .filter(Boolean)
        .join("; ");
      if (said.textContent !== verdict) {
        said.textContent = verdict;
      }
    };
    return made;
  }

  function paint() {
    if (read === null) {
      return;
    }
    box.hidden = read.parts.length === 0;
    const isLaid = (p) => (markOf(p.name) ?? "") !== "" || (p.laid !== "" && !p.taken && markOf(p.name) === null);
    const next = read.parts.find((p) => !isLaid(p))?.name;
    read.parts.forEach((p) => rows.get(p.name).paint(p.name === next));
    const laid = read.parts.filter(isLaid).length;
    const words = [
      `${laid} of ${read.parts.length} laid. Planks are marked as glued on the bench.`,
      notes.waiting === 0 ? "" : `${notes.waiting} ${notes.waiting === 1 ? "note waits" : "notes wait"} here to be sent: keep this page open.`,
      read.waits,
      notes.told,
      notes.fault,
    ]
      .filter(Boolean)
      .join(" ");
    if (told.textContent !== words) {
      told.textContent = words;
    }
  }

  const forget = watch((what) => (what === "facts" || what === "notes") && look());
  look();
  return {
    leave: () => {
      isHere = false;
      forget();
      show(into);
    },
  };
}
