// The one picture. It is drawn on the server and turned there, a sheet at a time; where the browser has the bodies and can draw them itself, that comes in its place.

import { el, show } from "../frame/dom.js";
import { neighbour, pick, shop } from "../frame/shop.js";
import { text } from "../frame/wire.js";
import { colouring, lit } from "./colours.js";
import { masterHandle } from "./master.js";
import { placeMark } from "./place.js";
import { toBench } from "./run.js";

/** A picture that did not come is asked for again after so long, ms. */
const AGAIN = 2000;

export const FIRST = { turned: 35, tilted: -28, upside: false, zoom: 1 };

/** Turning, zooming and picking are the same whichever way it is drawn. */
export function picture(into) {
  const sight = { ...FIRST };
  const words = el("p", { class: "hidden", id: "picture-words" });
  const sheet = el("div", {
    class: "sheet",
    role: "img",
    tabindex: "0",
    "aria-label": "The planks on the hull",
    "aria-describedby": "picture-words",
    keydown: keys,
    pointerdown: grip,
    wheel: (event) => {
      event.preventDefault();
      zoom(event.deltaY < 0 ? 1.1 : 1 / 1.1);
    },
  });
  const stage = el("div", { class: "stage" }, sheet);
  into.append(stage, words);
  const master = masterHandle(stage, sheet, sight);
  const mark = placeMark(stage);
  let drawer = drawn(sheet, sight);

  function zoom(by) {
    sight.zoom = Math.max(0.5, Math.min(20, sight.zoom * by));
    drawer.turn();
  }

  function turn(turned, tilted) {
    sight.turned = (((sight.turned + turned + 180) % 360) + 360) % 360 - 180;
    sight.tilted = Math.max(-90, Math.min(90, sight.tilted + tilted));
    drawer.turn();
    describe();
  }

  function keys(event) {
    const by = {
      ArrowLeft: () => turn(-5, 0),
      ArrowRight: () => turn(5, 0),
      ArrowUp: () => turn(0, 5),
      ArrowDown: () => turn(0, -5),
      "+": () => zoom(1.2),
      "-": () => zoom(1 / 1.2),
      Home: () => {
        Object.assign(sight, FIRST);
        turn(0, 0);
      },
      t: () => {
        sight.upside = !sight.upside;
        turn(0, 0);
      },
      PageDown: () => pick(neighbour(1)),
      PageUp: () => pick(neighbour(-1)),
      Enter: () => shop.picked && toBench(),
    }[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (by && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      by();
    }
  }

  const down = new Map();

  /** One finger turns, two zoom; what did not move picks. */
  function grip(event) {
    down.set(event.pointerId, event);
    sheet.setPointerCapture(event.pointerId);
    let moved = 0;
    const move = (now) => {
      const was = down.get(now.pointerId);
      if (!was) {
        return;
      }
      const [dx, dy] = [now.clientX - was.clientX, now.clientY - was.clientY];
      moved += Math.abs(dx) + Math.abs(dy);
      if (down.size === 1 && moved > 4) {
        turn(dx * 0.4, dy * 0.4);
      } else if (down.size === 2) {
        const other = [...down.values()].find((p) => p.pointerId !== now.pointerId);
        const far = (p) => Math.hypot(p.clientX - other.clientX, p.clientY - other.clientY);
        zoom(far(now) / Math.max(1, far(was)));
      }
      down.set(now.pointerId, now);
    };
    const up = (now) => {
      down.delete(now.pointerId);
      sheet.removeEventListener("pointermove", move);
      sheet.removeEventListener("pointerup", up);
      sheet.removeEventListener("pointercancel", up);
      if (now.type === "pointerup" && moved <= 4) {
        const id = drawer.at(now);
        if (id) {
          pick(id);
        }
      }
    };
    sheet.addEventListener("pointermove", move);
    sheet.addEventListener("pointerup", up);
    sheet.addEventListener("pointercancel", up);
  }

  function describe() {
    if (!shop.facts) {
      words.textContent = "No planks yet.";
      return;
    }
    const side = Math.abs(sight.turned) < 90 ? "starboard" : "port",
      from = sight.tilted < 0 === !sight.upside ? "below" : "above";
    words.textContent =
      `Seen from ${from} and to ${side}${sight.upside ? ", keel up" : ""}. ${shop.facts.order.length} planks. ` +
      `${shop.facts.summary.join(" ")} ${shop.picked ? `Picked: ${shop.picked}.` : ""}`;
  }

  return {
    paint: () => {
      drawer.paint();
      master.fetch();
      describe();
    },
    /** Planks are there, and will be painted once it is known which. */
    coming: () => drawer.coming?.(),
    mark: () => {
      drawer.mark();
      master.draw();
      describe();
    },
    upside: () => {
      sight.upside = !sight.upside;
      turn(0, 0);
    },
    home: () => {
      Object.assign(sight, FIRST);
      turn(0, 0);
    },
    zoom,
    /** The master plank is moved by hand, or not. */
    movesMaster: (on) => master.turnOn(on, drawer.project),
    /** Whether what is not planks can be shown too. */
    hasParts: () => Boolean(drawer.besides),
    besides: async () => {
      await drawer.besides?.();
      drawer.mark();
    },
    /** Another drawer in the place of this one. */
    drawnBy: (other) => {
      drawer.leave();
      show(sheet);
      drawer = other(sheet, sight, () => {
        master.draw();
        mark.draw(drawer);
      });
      if (shop.facts) {
        drawer.paint();
      }
    },
  };
}

/** By the server, as the sheet of a drawing; the newest wish waits while one is drawn. */
function drawn(sheet, sight) {
  let busy = false,
    again = false,
    picture = null,
    left = false;

  async function turn() {
    if (!shop.facts) {
      return;
    }
    if (busy) {
      again = true;
      return;
    }
    busy = true;
    do {
      again = false;
      const layers = [...new Set(shop.shown.runs.map((r) => r.layer))].filter((l) => !shop.hidden.has(l)).join(",");
      const asked = new URLSearchParams({
        turned: sight.turned.toFixed(1),
        tilted: sight.tilted.toFixed(1),
        upside: sight.upside,
        layers,
      });
      const of = shop.shown.turn;
      const got = left ? null : await text(`picture/${of}?${asked}`);
      if (got === null && !left && shop.shown.turn === of && sheet.isConnected) {
        // Did not come, and is shown still: no news need come that would have it fetched.
        setTimeout(() => !left && shop.shown.turn === of && turn(), AGAIN);
      }
      if (got !== null && !left) {
        const read = new DOMParser().parseFromString(got, "image/svg+xml").documentElement;
        picture = document.importNode(read, true);
        picture.setAttribute("width", "100%");
        picture.setAttribute("height", "100%");
        picture.setAttribute("aria-hidden", "true");
        picture.querySelector("title")?.remove();
        picture.querySelector("rect")?.remove();
        for (const path of picture.querySelectorAll("path[fill]")) {
          path.dataset.light = parseInt(path.getAttribute("fill").slice(1, 3), 16) / 255;
        }
        colour();
        show(sheet, picture);
      }
    } while (again);
    busy = false;
  }

  function colour() {
    const by = colouring();
    for (const group of picture.querySelectorAll("g")) {
      const id = group.getAttribute("class"),
        isPicked = id === shop.picked;
      for (const path of group.querySelectorAll("path")) {
        path.setAttribute("fill", lit(by.of(id) ?? "#cccccc", Number(path.dataset.light)));
        path.setAttribute("stroke", isPicked ? "#1646a0" : "#2f2d27");
        path.setAttribute("stroke-width", isPicked ? "0.9" : "0.25");
      }
    }
    const [width, height] = [320, 200];
    const [w, h] = [width / sight.zoom, height / sight.zoom];
    picture.setAttribute("viewBox", `${(width - w) / 2} ${(height - h) / 2} ${w} ${h}`);
  }

  return {
    leave: () => {
      left = true;
    },
    turn,
    paint: turn,
    mark: () => picture && colour(),
    at: (event) =>
      document.elementFromPoint(event.clientX, event.clientY)?.closest?.(".sheet g")?.getAttribute("class") ?? null,
  };
}
