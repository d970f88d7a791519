// What this browser keeps of hulls besides the one that is shown: notes that wait for another, or for this one from before its folder was moved, and what was put aside.

const KEPT = /^plankfit (notes|sawn|aside) (\S+)/;

/** @returns by job, and whether it is put aside, what is kept and under which keys, and the job's name; what is empty or no such thing is not among them */
export function kept() {
  const groups = new Map();
  try {
    for (const key of Object.keys(localStorage)) {
      const [, kind, of] = KEPT.exec(key) ?? [];
      const read = kind ? parsed(localStorage.getItem(key)) : null;
      if (read === null || read.waiting.length + (read.refused ?? []).length === 0) {
        continue;
      }
      const isAside = kind === "aside",
        id = `${isAside} ${of}`;
      const group = groups.get(id) ?? { id, isAside, of, name: "", keys: [], waiting: [], refused: [] };
      group.name ||= read.name ?? "";
      group.keys.push(key);
      group.waiting.push(...read.waiting);
      group.refused.push(...(read.refused ?? []));
      groups.set(id, group);
    }
  } catch {
    // Nothing is kept here.
  }
  return [...groups.values()];
}

function parsed(text) {
  try {
    const read = JSON.parse(text);
    return Array.isArray(read?.waiting) ? read : null;
  } catch {
    return null;
  }
}

/** Kept until somebody looks at it and says what is to become of it. */
export function putAside(of, waiting, refused = [], name = "") {
  try {
    const key = `plankfit aside ${of}`,
      had = parsed(localStorage.getItem(key));
    localStorage.setItem(
      key,
      JSON.stringify({ waiting: [...(had?.waiting ?? []), ...waiting], refused: [...(had?.refused ?? []), ...refused], name: name || (had?.name ?? "") }),
    );
    return true;
  } catch {
    return false;
  }
}

/** Takes away what of it has gone elsewhere: a page that is open may have kept more since. */
export function takeAway({ keys, waiting, refused }) {
  const gone = new Set([...waiting, ...refused].map((n) => JSON.stringify(n)));
  const still = (list) => (list ?? []).filter((n) => !gone.has(JSON.stringify(n)));
  try {
    for (const key of keys) {
      const now = parsed(localStorage.getItem(key)),
        left = { ...now, waiting: still(now?.waiting), refused: still(now?.refused) };
      if (left.waiting.length + left.refused.length > 0) {
        localStorage.setItem(key, JSON.stringify(left));
      } else {
        localStorage.removeItem(key);
      }
    }
  } catch {
    // It stays, and is told of again.
  }
}
