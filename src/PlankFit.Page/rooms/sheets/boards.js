// The search for a plan of cutting, shown as it improves: begun by hand, stopped with what it has found.

import { el, show } from "../frame/dom.js";
import { changed, shop, watch } from "../frame/shop.js";
import { inTurn, json, post } from "../frame/wire.js";

/** @param found called once there are boards */
export function boards(into, found) {
  let isHere = true,
    seen = null,
    painted = "";

  const look = inTurn(async () => {
    const now = await json("boards");
    if (!isHere || now === null) {
      return;
    }
    if (seen !== null && now.turn !== null && (now.turn !== seen.turn || seen.what !== null) && now.what === null) {
      found();
    }
    seen = now;
    tellBoards(now);
    const of = JSON.stringify([now, shop.facts?.turn]);
    if (of !== painted) {
      painted = of;
      paint(now);
    }
  });

  function paint(now) {
    const busy = now.what !== null,
      old = now.turn !== null && now.turn !== shop.facts?.turn;
    const focused = document.activeElement?.dataset?.does;
    show(
      into,
      busy
        ? el("p", {}, el("progress", { value: now.part, max: "1", "aria-label": "Time of the search that is gone" }), ` ${now.what} `, el("button", { "data-does": "stop", click: () => post("boards/stop") }, "Stop, keep the best"))
        : el("p", {}, el("button", { class: "main", "data-does": "begin", click: () => post("boards").then(begun) }, now.turn === null ? "Search for a plan of cutting" : old ? "Search anew: the planks have changed" : "Search once more"), " ", el("span", { id: "boards-told", role: "status" })),
      now.fault ? el("p", { class: "fault" }, now.fault) : null,
      now.improved.length > 0
        ? el("details", { open: busy }, el("summary", {}, `Better and better: ${now.improved.length} steps`), el("ol", { class: "improved", reversed: true }, [...now.improved].reverse().slice(0, 12).map((i) => el("li", {}, i))))
        : null,
    );
    if (focused) {
      into.querySelector("button")?.focus();
    }
  }

  function begun(answer) {
    if (!answer.ok) {
      document.getElementById("boards-told").textContent =
        "Nothing to search: there are no planks, or the job names no stock: add [nest] (plankfit help nest).";
    }
    look();
  }

  const forget = watch((what) => (what === "boards" || what === "facts") && look());
  look();
  return {
    leave: () => {
      isHere = false;
      forget();
    },
  };
}

/** What planks are coloured by, where boards were searched for what is laid now. */
export function tellBoards(now) {
  const before = shop.boards;
  shop.boards = now.turn === shop.facts?.turn && Object.keys(now.boards).length > 0 ? now.boards : null;
  if (before !== shop.boards && shop.colour === "board") {
    changed("colour");
  }
}

export const lookForBoards = inTurn(async () => {
  const now = await json("boards");
  if (now !== null) {
    tellBoards(now);
  }
});
