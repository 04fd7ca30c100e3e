// Asking the server again and again: often in sight, rarely behind another tab, and at once when something says so.

const VISIBLE_MS = 2000;
const HIDDEN_MS = 15_000;

/** Begins to call `ask` whenever what it gives is called, and again after each answer: at once where that was called
 *  meanwhile, after the milliseconds that `ask` gives, else in its time. `ask` never throws. */
export function polling(ask, hintedMs = 0) {
  let timer = 0;
  let asking = false;
  let hinted = false;
  async function turn() {
    clearTimeout(timer);
    asking = true;
    const soon = await ask();
    asking = false;
    timer = setTimeout(turn, soon ?? (hinted ? hintedMs : document.hidden ? HIDDEN_MS : VISIBLE_MS));
    hinted = false;
  }
  return async () => {
    if (asking) hinted = true;
    else await turn();
  };
}

/** The server's answer at an address; 304 where it is what `etag` names. */
export const asked = (address, etag) =>
  fetch(address, { headers: etag ? { "If-None-Match": etag } : {}, cache: "no-store", signal: AbortSignal.timeout?.(8000) });
