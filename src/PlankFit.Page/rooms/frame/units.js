// In which units lengths are shown, on this browser alone. All of them are worded by the server: no second notation here.

const KEY = "plankfit units";

/** mm, ft, or nothing for the job's own. */
export const units = { shown: read() };

function read() {
  try {
    const kept = localStorage.getItem(KEY);
    return ["mm", "ft"].includes(kept) ? kept : null;
  } catch {
    return null;
  }
}

export function turnUnits(to) {
  units.shown = to;
  try {
    localStorage.setItem(KEY, to);
  } catch {
    // It holds for as long as the page is open.
  }
}

export const inUnits = (path) => (units.shown ? `${path}${path.includes("?") ? "&" : "?"}units=${units.shown}` : path);
