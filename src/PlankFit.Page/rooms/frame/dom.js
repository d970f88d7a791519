// Elements are made here and nowhere by text: what comes from files is shown as text, whatever stands in it.

const SVG = "http://www.w3.org/2000/svg";

/** An element with its attributes (functions are listeners, booleans are there or not) and what stands in it. */
export function el(tag, attributes = {}, ...inner) {
  return filled(document.createElement(tag), attributes, inner);
}

export function svg(tag, attributes = {}, ...inner) {
  return filled(document.createElementNS(SVG, tag), attributes, inner);
}

function filled(made, attributes, inner) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") {
      made.addEventListener(name, value);
    } else if (value === true) {
      made.setAttribute(name, "");
    } else if (value !== false && value !== null && value !== undefined) {
      made.setAttribute(name, value);
    }
  }

  made.append(...inner.flat(Infinity).filter((i) => i !== null && i !== undefined));
  return made;
}

/** Puts something in the place of all that stands in an element. */
export function show(into, ...inner) {
  into.replaceChildren(...inner.flat(Infinity).filter((i) => i !== null && i !== undefined));
}

/** Gives the field that is typed in its place and its marks back, once all is put there anew. */
export function handIn(part) {
  const field = document.activeElement;
  if (!part.contains(field)) {
    return () => {};
  }
  const [from, to] = [field.selectionStart, field.selectionEnd];
  return () => {
    if (field.isConnected && part.contains(field) && document.activeElement !== field) {
      field.focus({ preventScroll: true });
      if (typeof from === "number") {
        field.setSelectionRange(from, to);
      }
    }
  };
}

/** A question with its answers; gives the answer that was taken, null for none. */
export function ask(inner, answers) {
  return new Promise((done) => {
    const box = el(
      "dialog",
      { close: () => { box.remove(); done(box.returnValue || null); } },
      ...inner,
      el("p", {}, answers.map(([value, words]) => el("button", { click: () => box.close(value) }, words))),
    );
    document.body.append(box);
    box.showModal();
  });
}
