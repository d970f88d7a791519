// A place along the hull that a table or a chart speaks of: the section there, drawn over the picture.

import { el, svg } from "../frame/dom.js";
import { shop } from "../frame/shop.js";

export function placeMark(stage) {
  const line = svg("polygon", { class: "place" });
  const box = svg("svg", { class: "place-lines", "aria-hidden": "true" }, line);
  const told = el("p", { class: "place-told", role: "status" });

  function draw(drawer) {
    const of = shop.place ? drawer.box?.() : null;
    if (!of) {
      box.remove();
      told.remove();
      return;
    }
    const { least, most } = of,
      { x, words } = shop.place;
    const corners = [
      [x, least[1], least[2]],
      [x, most[1], least[2]],
      [x, most[1], most[2]],
      [x, least[1], most[2]],
    ].map(drawer.project);
    line.setAttribute("points", corners.map(([a, b]) => `${a.toFixed(1)},${b.toFixed(1)}`).join(" "));
    if (!box.isConnected) {
      stage.append(box);
      told.replaceChildren(
        `Shown: ${words}. `,
        el("button", { class: "link", click: () => {
          shop.place = null;
          draw(drawer);
        } }, "no more"),
      );
      stage.after(told);
    }
  }

  return { draw };
}
