// The blanks of the check sheet, each to be typed in where it was read. What is typed is a note of the job's journal: kept here until the shop's computer has it, and judged there,
// since lengths are read in one place only. Into the file of what was measured it goes where that is asked for.

import { el, handIn, show } from "../frame/dom.js";
import { look as lookAtNotes, note, notes } from "../frame/notes.js";
import { pick, shop, watch } from "../frame/shop.js";
import { inUnits, units } from "../frame/units.js";
import { inTurn, json, post } from "../frame/wire.js";

/** A blank's name without the number of the reading at its end. */
const placeOf = (name) => name.slice(0, name.lastIndexOf(" | "));
const named = (place, time) => `${place} | ${time}`;
const WORDS = ["read", "again"];

/** What is wrong in a blank, told in it. */
function withoutPlace(name, words) {
  const [what, ...rest] = name.split(" | ");
  const place = `${what}, ${rest.slice(0, -2).join(" | ")}: `;
  return words.startsWith(place) ? words.slice(place.length) : words;
}

/** @param toPlace shows a place along the hull, or a plank */
export function readings(into, toPlace) {
  let isHere = true,
    sheet = null,
    held = new Map(),
    read = null,
    asked = "",
    said = "",
    building = false;
  /** By place its row, as long as the sheet has it: what is being typed in it stays. */
  const rows = new Map();
  const head = el("div", { class: "readings-head" });
  const groups = el("div", {});
  show(into, el("section", { class: "readings", "aria-label": "What the tape says" }, head, groups));

  const look = inTurn(async () => {
    const turn = shop.facts?.turn,
      now = `${turn} ${units.shown}`;
    if (!turn) {
      return;
    }
    if (asked !== now) {
      asked = now;
      const got = await json(inUnits(`taping/${turn}`));
      if (!isHere || asked !== now) {
        return;
      }
      if (got === null) {
        // What is typed is shown whether the newest sheet can be had or not.
        asked = "";
        paint();
        return;
      }
      sheet = got;
      build();
    }
    const got = await json(inUnits(`readings/${turn}`));
    if (isHere && got !== null && asked === now) {
      read = got;
      held = new Map(got.readings.map((r) => [r.name, r]));
    }
    paint();
  });

  /** The newest of a blank: what waits here, what was refused, what the journal has. */
  function stateOf(name) {
    const refused = notes.refused.get(name);
    if (notes.reading.has(name)) {
      return { value: notes.reading.get(name), kind: "waits", words: notes.reading.get(name) ? "not sent yet" : "" };
    }
    if (refused) {
      return { value: refused.value, kind: "beyond", words: withoutPlace(name, refused.words) };
    }
    const has = held.get(name);
    return has
      ? { value: has.text, kind: has.verdict, words: [has.words, has.put ? "in the file of what was measured" : ""].filter(Boolean).join("; ") }
      : { value: "", kind: "", words: "" };
  }

  const isRead = (place, times) => times.some((t) => stateOf(named(place, t)).value !== "");
  const isBeyond = (place, times) => times.some((t) => stateOf(named(place, t)).kind === "beyond");

  /** The readings that a place has a field for: those that the sheet asks for, and any beside them. */
  function timesOf(place, times) {
    const more = [...held.keys(), ...notes.reading.keys(), ...notes.refused.keys()].filter((n) => placeOf(n) === place).map((n) => Number(n.slice(n.lastIndexOf(" | ") + 3)));
    return [...new Set([...times, ...more])].sort((a, b) => a - b);
  }

  function row(first) {
    const place = placeOf(first.name);
    const fields = el("div", { class: "blank-fields" });
    const where = el("p", { class: "blank-where" });
    const should = el("p", { class: "blank-should" });
    const box = el("div", { class: "blank", role: "group" }, where, should, fields);
    let wordsOf = "";

    function paintWords(blank) {
      const words = blank.plank ? `${blank.plank}, ${blank.where}` : blank.where,
        now = JSON.stringify([words, blank.should, blank.limit, blank.note]);
      if (now === wordsOf) {
        return;
      }
      wordsOf = now;
      box.setAttribute("aria-label", words);
      const leadsTo =
        blank.plank && shop.facts.order.includes(blank.plank) ? { plank: blank.plank }
        : typeof blank.x === "number" ? { x: blank.x, words: blank.where }
        : null;
      show(
        where,
        leadsTo ? el("button", { class: "link", click: () => toPlace(leadsTo), "aria-label": `${words}: show on the hull` }, el("b", {}, blank.plank ?? "show on the hull")) : null,
        ` ${blank.where}`,
        blank.note ? el("span", { class: "aside" }, ` ${blank.note}`) : null,
      );
      show(should, blank.should === null ? null : ["should read ", el("b", {}, blank.should), blank.limit ? [", limit ", el("b", {}, `± ${blank.limit}`)] : null]);
    }

    const made = new Map();
    function paintRow(present) {
      paintWords(present);
      for (const time of timesOf(place, present.times)) {
        const name = named(place, time);
        if (!made.has(name)) {
          const id = `blank-${rows.size}-${made.size}-${Math.random().toString(36).slice(2, 8)}`;
          const input = el("input", {
            id,
            type: "text",
            autocomplete: "off",
            inputmode: sheet.metric ? "decimal" : "text",
            enterkeyhint: "next",
            maxlength: "60",
            "data-blank": name,
            input: () => {
              input.dataset.typing = "";
            },
            change: () => !building && typed(name, input, paintRow.of),
            // A field that was taken away and put back while it was typed in tells of no change.
            blur: () => !building && "typing" in input.dataset && typed(name, input, paintRow.of),
            keydown: (event) => {
              if (event.key === "Enter") {
                if ("typing" in input.dataset || isToBeReadAgain(name)) {
                  typed(name, input, paintRow.of);
                }
                next(input);
              }
            },
          });
          const told = el("p", { class: "verdict", id: `${id}-told` });
          input.setAttribute("aria-describedby", told.id);
          const entry = el("div", { class: "blank-entry" }, el("label", { for: id }, WORDS[time - 1] ?? `reading ${time}`), input, told);
          made.set(name, { input, told, entry });
          fields.append(entry);
        }
        const { input, told, entry } = made.get(name),
          { value, kind, words } = stateOf(name);
        // What somebody is typing stays; who has not begun to sees what is there.
        if (!("typing" in input.dataset) && (document.activeElement !== input || input.value === input.dataset.was)) {
          input.value = value;
        }
        input.dataset.was = value;
        entry.dataset.kind = kind;
        input.setAttribute("aria-invalid", kind === "beyond" && notes.refused.has(name) ? "true" : "false");
        const mark = { within: "✓ ", beyond: "✗ ", other: "? ", waits: "… " }[kind] ?? "";
        if (told.textContent !== mark + words) {
          told.textContent = mark + words;
        }
      }
    }
    paintRow.of = first;
    return {
      box,
      paint: (present) => {
        paintRow.of = present;
        paintRow(present);
      },
    };
  }

  /** The same again is a reading of its own where what stands there does not count: it was refused, or is of another lay-out. */
  const isToBeReadAgain = (name) => notes.refused.has(name) || stateOf(name).kind === "other";

  function typed(name, input, blank) {
    const value = input.value.trim();
    delete input.dataset.typing;
    if (value === stateOf(name).value && !(value !== "" && isToBeReadAgain(name))) {
      return;
    }
    note("", name, value, { units: units.shown, shouldMm: blank.shouldMm ?? null });
  }

  /** With one hand: the key for done goes on to the blank below. */
  function next(input) {
    const all = [...into.querySelectorAll(".blank input")].filter((i) => i.offsetParent !== null);
    all[all.indexOf(input) + 1]?.focus();
  }

  function build() {
    const hand = handIn(groups);
    building = true;
    const open = new Set([...groups.querySelectorAll("details[open]")].map((d) => d.dataset.title));
    const kept = new Set();
    show(
      groups,
      sheet.groups.map((group, i) => {
        const body = el("div", { class: "blanks" });
        const count = el("span", { class: "aside" });
        const box = el("details", { "data-title": group.title, open: open.size > 0 ? open.has(group.title) : i === 0 }, el("summary", {}, el("b", {}, group.title), " ", count), body);
        const present = group.blanks.map((b) => ({ ...b, key: `${group.title} | ${b.name}` }));
        const fill = () => {
          if (!box.open || body.childElementCount > 0) {
            return;
          }
          for (const blank of present) {
            if (!rows.has(blank.key)) {
              rows.set(blank.key, row(blank));
            }
            body.append(rows.get(blank.key).box);
            rows.get(blank.key).paint(blank);
          }
        };
        present.forEach((b) => kept.add(b.key));
        box.addEventListener("toggle", fill);
        group.fill = fill;
        group.present = present;
        group.count = count;
        return box;
      }),
    );
    for (const key of [...rows.keys()].filter((k) => !kept.has(k) && !k.startsWith("beside"))) {
      const { box } = rows.get(key);
      if (box.querySelector("[data-typing]") === null) {
        rows.delete(key);
      } else {
        // It is asked for no more, and somebody is typing in it: what it should say is still that of his marks.
        groups.prepend(box);
      }
    }
    sheet.groups.forEach((g) => g.fill());
    hand();
    building = false;
  }

  /** What was read where the sheet has no blank any more, so that it can be seen and put right. */
  const beside = el("details", { class: "beside" });

  function paint() {
    if (sheet === null) {
      return;
    }
    // A seam may be asked for twice, as what to tape first and in its layer's turn.
    const all = new Set(),
      beyond = new Set();
    for (const group of sheet.groups) {
      let has = 0;
      for (const blank of group.present) {
        const place = placeOf(blank.name),
          times = timesOf(place, blank.times);
        if (isRead(place, times)) {
          has += 1;
          all.add(place);
        }
        if (isBeyond(place, times)) {
          beyond.add(place);
        }
        rows.get(blank.key)?.paint(blank);
      }
      group.count.textContent = `${has} of ${group.present.length} read`;
    }
    const others = [...held.values()].filter((r) => r.where);
    show(head, headOf(all.size, beyond.size));
    if (others.length > 0) {
      if (!beside.isConnected) {
        groups.append(beside);
      }
      const body = el("div", { class: "blanks" });
      for (const r of others) {
        const blank = { name: r.name, where: r.where, should: null, shouldMm: null, limit: "", times: [], note: "", key: `beside | ${placeOf(r.name)}` };
        if (!rows.has(blank.key)) {
          rows.set(blank.key, row(blank));
        }
        rows.get(blank.key).paint(blank);
        if (!body.contains(rows.get(blank.key).box)) {
          body.append(rows.get(blank.key).box);
        }
      }
      const hand = handIn(beside);
      building = true;
      show(beside, el("summary", {}, el("b", {}, "Read, and asked for no more "), el("span", { class: "aside" }, `${others.length}`)), body);
      hand();
      building = false;
    } else {
      beside.remove();
    }
  }

  function headOf(all, beyond) {
    const waiting = notes.reading.size,
      words = putWords(read?.toPut ?? 0, read?.toTakeOut ?? 0);
    return [
      el(
        "p",
        { role: "status", class: "readings-told" },
        [
          all === 0 ? `Nothing is read yet: type what the tape says: ${sheet.bare}, or with its own unit (3/8 in).` : `${all} ${all === 1 ? "place" : "places"} read, ${beyond === 0 ? "none" : beyond} beyond the limit.`,
          waiting > 0 ? `${waiting} ${waiting === 1 ? "waits" : "wait"} here to be sent: keep this page open.` : "",
          notes.told,
          notes.fault,
          said,
        ]
          .filter(Boolean)
          .join(" "),
      ),
      sheet.trusted
        ? el(
            "p",
            {},
            el("button", { class: "main", disabled: words === "" || waiting > 0, click: put }, words || "All that can be is in the file of what was measured"),
            el("span", { class: "aside" }, " The hull is then adjusted to them, here and on the command line. a, b and d are judged here alone."),
          )
        : el("p", { class: "aside" }, "They are judged here and kept beside the job. The hull is adjusted to what the tape says where the job has [trust] (plankfit help trust)."),
    ];
  }

  /** What is taken back, or read anew, goes out of the file too; empty where there is nothing to do. */
  function putWords(into, out) {
    const readings = (n) => `${n} ${n === 1 ? "reading" : "readings"}`;
    return (
      into > 0 && out > 0 ? `Put ${readings(into)} into the file of what was measured, take ${out} out`
      : into > 0 ? `Put ${readings(into)} into the file of what was measured`
      : out > 0 ? `Take ${readings(out)} out of the file of what was measured`
      : ""
    );
  }

  async function put(event) {
    event.target.disabled = true;
    const answer = await post("readings/put");
    said = (answer.told?.words ?? ["The shop's computer did not take it."]).join(" ");
    await lookAtNotes();
    look();
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
