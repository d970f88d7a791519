// All that goes over the wire. The job's number stands in the page's own address.

const base = location.pathname.replace(/\/?$/, "/");

export const at = (path) => base + path;

/**
 * What a turn that is shown no more has to give is nothing: a newer one is told of already. So is what a server out of reach, or gone in the middle of its answer, has to
 * give: that it is lost is told by the news.
 */
async function got(path, read) {
  try {
    const answer = await fetch(at(path));
    return answer.ok && answer.status !== 204 ? await read(answer) : null;
  } catch {
    return null;
  }
}

export const json = (path) => got(path, (answer) => answer.json());

export const text = (path) => got(path, (answer) => answer.text());

export const bytes = (path) => got(path, (answer) => answer.arrayBuffer());

/** @returns with the code 0 where the server is out of reach, or was gone before it had answered */
export async function post(path, body = {}) {
  try {
    const answer = await fetch(at(path), {
      method: "POST",
      headers: { "Content-Type": "application/json", "X-PlankFit": "1" },
      body: JSON.stringify(body),
    });
    const told = answer.headers.get("Content-Type")?.includes("json") ? await answer.json() : null;
    return { ok: answer.ok, code: answer.status, told };
  } catch {
    return { ok: false, code: 0, told: null };
  }
}

/**
 * Work that is done anew whenever it is asked for, one at a time: who asks meanwhile has it done once more, however many ask, so that answers never come in turned about and
 * none waits behind a hundred others.
 *
 * @returns what is asked; it is done once what was asked for last is
 */
export function inTurn(work) {
  let now = null,
    next = null;
  function begin() {
    next = null;
    now = work().finally(() => {
      now = next === null ? null : now;
    });
    return now;
  }
  return () => (now === null ? begin() : (next ??= now.then(begin, begin)));
}

/** Where a server would have none of it, as with too many pages open, a browser does not ask again by itself: ms. */
const ANEW = 3000;

/** Listens to the news while the page is looked at: a browser has six lines to a server, and hidden pages must not hold them. */
export function listen(heard, lost) {
  let source = null;
  function open() {
    source = new EventSource(at("news"));
    for (const kind of ["state", "planks", "laid", "papers", "notes", "others", "boards"]) {
      source.addEventListener(kind, (event) => heard(kind, event.data.split(" ")));
    }
    source.onerror = () => {
      lost();
      if (source?.readyState === EventSource.CLOSED) {
        source = null;
        setTimeout(() => source === null && !document.hidden && open(), ANEW);
      }
    };
  }

  document.addEventListener("visibilitychange", () => {
    if (document.hidden) {
      source?.close();
      source = null;
    } else if (!source) {
      open();
    }
  });
  if (!document.hidden) {
    open();
  }
}
