// Other values of the job tried beside it: what is to be tried, what nothing beats of it, and what somebody keeps side by side.

import { el, show } from "../frame/dom.js";
import { shop, watch } from "../frame/shop.js";
import { at, json, post, text } from "../frame/wire.js";
import { asking, seen } from "./asking.js";

export function others(place) {
  let isHere = true,
    painted = "",
    chartOf = "",
    picked = null,
    again = false,
    busy = false;
  const told = el("div", { role: "alert", class: "told" }),
    progress = el("div", { class: "progress" }),
    chart = el("div", { class: "wide chart", tabindex: "0", role: "region", "aria-label": "Chart" }),
    head = el("p", { class: "head" }),
    old = el("p", { class: "aside", hidden: true }, "These are of the job as it was before its last change."),
    found = sideBySide(null, "What nothing beats"),
    kept = sideBySide("Kept side by side", "Kept side by side"),
    form = asking((what) => send("others", what), () => look());
  show(
    place,
    el(
      "section",
      { class: "others", "aria-label": "Try others" },
      el("div", {}, el("h2", {}, "Try others"), form.made, progress, told),
      el("div", {}, kept.made, chart, head, old, found.made),
    ),
  );

  async function send(path, what) {
    const answer = await post(path, what).catch(() => null);
    if (answer === null || !answer.ok) {
      show(told, el("p", {}, answer?.code === 409 ? "Another search is on: stop it first." : "The shop's computer did not take it."));
    }
    await look();
  }

  /** One at a time: what is told meanwhile is looked at once more. */
  async function look() {
    if (busy) {
      again = true;
      return;
    }
    busy = true;
    do {
      again = false;
      const now = await json(`others?${seen()}`).catch(() => null);
      if (!isHere) {
        break;
      }
      if (now === null) {
        continue;
      }
      paint(now);
      await draw(now);
    } while (again && isHere);
    busy = false;
  }

  function paint(now) {
    const words = JSON.stringify([now, shop.state?.turn]);
    if (words === painted) {
      return;
    }
    painted = words;
    form.renew(now.measures, now.isBusy);
    show(
      progress,
      now.isBusy
        ? el(
            "p",
            {},
            el("progress", { value: now.asked === 0 ? null : now.tried / now.asked, max: "1", "aria-label": "Lay-outs tried" }),
            ` ${now.tried} of ${now.asked || "…"} `,
            el("button", { click: () => post("others/stop") }, "Stop, keep these"),
          )
        : null,
    );
    show(
      told,
      now.told.slice(0, 8).map((t) => el("p", {}, t)),
      now.told.length > 8 ? el("p", {}, `and ${now.told.length - 8} more`) : null,
    );
    const isOld = now.search > 0 && shop.state !== null && now.turn !== shop.state.turn;
    const best = now.layouts.filter((l) => l.isUnbeaten || l.number === 0);
    head.textContent = now.head;
    old.hidden = !isOld || best.length === 0;
    found.fill(now.columns, best);
    kept.fill(now.columns, now.kept);
    mark();
  }

  function named(layout) {
    return layout.number === 0 ? layout.name : `${layout.number}: ${layout.name}`;
  }

  /** A table and cards of lay-outs. What is there already stays where it is, so that no button is taken from under the hand while others come. */
  function sideBySide(title, label) {
    const heads = el("tr"),
      rows = el("tbody"),
      cards = el("ul", { class: "cards" }),
      made = el(
        "div",
        {},
        title ? el("h2", {}, title) : null,
        el("div", { class: "wide", tabindex: "0", role: "region", "aria-label": label }, el("table", {}, el("thead", {}, heads), rows)),
        cards,
      );
    let columns = "",
      there = new Map();

    function fill(names, layouts) {
      made.hidden = layouts.length === 0;
      if (JSON.stringify(names) !== columns) {
        columns = JSON.stringify(names);
        there = new Map();
        show(heads, el("th", { scope: "col" }, "lay-out"), names.map((c) => el("th", { scope: "col" }, c)));
      }
      const now = new Map(layouts.map((l) => [JSON.stringify(l), l]));
      there = new Map([...now].map(([key, l]) => [key, there.get(key) ?? [row(l), card(l)]]));
      settle(rows, [...there.values()].map(([r]) => r));
      settle(cards, [...there.values()].map(([, c]) => c));
    }

    made.hidden = true;
    return { made, fill };
  }

  function settle(parent, nodes) {
    for (const old of [...parent.children]) {
      if (!nodes.includes(old)) {
        old.remove();
      }
    }
    nodes.forEach((node, i) => {
      if (parent.children[i] !== node) {
        parent.insertBefore(node, parent.children[i] ?? null);
      }
    });
  }

  function row(l) {
    return el(
      "tr",
      { "data-layout": `${l.search}-${l.number}` },
      el("th", { scope: "row" }, named(l)),
      l.cells.map((c) => el("td", {}, c)),
    );
  }

  function card(l) {
    const which = { search: l.search, number: l.number };
    return el(
      "li",
      { "data-layout": `${l.search}-${l.number}`, focusin: () => point(l.search, l.number) },
      el("h3", {}, named(l)),
      el("img", { src: at(`others/${l.search}/${l.number}`), alt: `The planks of ${l.name}, forward to the left, port above`, loading: "lazy" }),
      l.brief.map((b) => el("p", {}, b)),
      el(
        "p",
        { class: "doing" },
        l.canBeTaken ? el("button", { class: "main", click: () => take(l, which), "aria-label": `Take this one: ${l.name}` }, "Take this one") : null,
        el(
          "button",
          { click: () => send("others/keep", { ...which, keep: !l.isKept }), "aria-label": `${l.isKept ? "Keep no longer" : "Keep beside others"}: ${l.name}` },
          l.isKept ? "Keep no longer" : "Keep beside others",
        ),
      ),
    );
  }

  function take(layout, which) {
    return send("others/take", { ...which, keep: false });
  }

  /** The very drawing that the command line writes; a point of it picks its lay-out. */
  async function draw(now) {
    const which = `${now.search} ${now.tried} ${seen()}`;
    if (which === chartOf || now.tried === 0) {
      if (now.tried === 0) {
        show(chart);
        chart.hidden = true;
      }
      return;
    }
    const got = await text(`others/${now.search}/chart?${seen()}`).catch(() => null);
    if (got === null || !isHere) {
      return;
    }
    chartOf = which;
    chart.hidden = false;
    const drawn = document.importNode(new DOMParser().parseFromString(got, "image/svg+xml").documentElement, true);
    drawn.removeAttribute("width");
    drawn.removeAttribute("height");
    drawn.querySelector("title")?.remove();
    drawn.setAttribute("role", "img");
    drawn.setAttribute("aria-label", `${now.tried} lay-outs as points; what nothing beats is listed below with its figures`);
    for (const point of drawn.querySelectorAll("g[class^='layout-']")) {
      point.addEventListener("click", () => pickOf(now.search, point.getAttribute("class").slice("layout-".length)));
    }
    show(chart, drawn);
    mark();
  }

  function point(search, number) {
    picked = `${search}-${number}`;
    mark();
  }

  function pickOf(search, number) {
    point(search, number);
    found.made.querySelector(`li[data-layout="${picked}"]`)?.scrollIntoView({ block: "nearest" });
  }

  function mark() {
    for (const row of place.querySelectorAll("[data-layout]")) {
      row.classList.toggle("pointed-at", row.dataset.layout === picked);
    }
    for (const point of chart.querySelectorAll("g[class^='layout-']")) {
      point.toggleAttribute("data-picked", picked !== null && point.getAttribute("class") === `layout-${picked.split("-")[1]}`);
    }
  }

  const forget = watch((what) => (what === "others" || what === "state") && (form.refresh(), look()));
  look();
  return () => {
    isHere = false;
    forget();
  };
}
