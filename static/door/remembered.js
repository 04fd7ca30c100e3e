// Small things that this phone remembers by itself. Storage that is full or shut off forgets them with the page, and
// never stops a press.

const here = new Map();

/** What was remembered under that name, or null. */
export function recall(name) {
  if (here.has(name)) {
    const text = here.get(name);
    remember(name, text); // there may be room again
    return text;
  }
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Remembers a text under a name. */
export function remember(name, text) {
  here.delete(name);
  try {
    localStorage.setItem(name, text);
  } catch {
    here.set(name, text);
  }
}
