// What the first drawing does without: parts of a screen and sheets over it, fetched by name when first wanted, and all once
// the page has come to rest, so that they are there when the network is not. Only a screen knows where they lie, and offers
// them; who wants one names it.

import { redraw } from "./screen.js";
import { openWords } from "./words.js";

const REST_MS = 1500;
const offered = {};
const fetched = new Map();
const arrived = new Map();

/** A screen says what it has: parts by name, each with what fetches it; 'sheets' are all the sheets by name. */
export const offer = (parts) => Object.assign(offered, parts);

/** What has that name, fetched once; a failed fetch is tried again at the next wish. */
export function wanted(name) {
  if (!fetched.has(name)) fetched.set(name, fetchOnce(name).catch((error) => { fetched.delete(name); throw error; }));
  return fetched.get(name);
}

async function fetchOnce(name) {
  const [found] = await Promise.all([offered[name](), openWords("en.sheets")]);
  arrived.set(name, found);
  redraw();
  return found;
}

/** What has that name if it is here; else it is fetched, and the page drawn again when it comes. */
export function part(name) {
  if (!arrived.has(name)) wanted(name).catch(() => {});
  return arrived.get(name);
}

/** What has that name if it is here. */
export const here = (name) => arrived.get(name);

/** Opens the sheet of that name with these facts. */
export async function open(name, ...facts) {
  const sheets = await wanted("sheets");
  (await sheets[name]())(...facts);
}

/** Fetches the rest when the page has come to rest. */
export function fetchRest() {
  setTimeout(() => {
    Object.keys(offered).forEach(part);
    wanted("sheets").then((sheets) => Promise.all(Object.values(sheets).map((fetchIt) => fetchIt()))).catch(() => {});
  }, REST_MS);
}
