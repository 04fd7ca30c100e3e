// What the first sight of Now does without: sheets, lists of what can go wrong, the page's own fold. Fetched when first
// wanted, and all of them once the page has come to rest, so that they are there when the network is not.

import { openWords } from "./words.js";

const MODULES = {
  away: () => import("./away.js"),
  badpiece: () => import("./badpiece.js"),
  firstpiece: () => import("./firstpiece.js"),
  load: () => import("./load_sheet.js"),
  lockup: () => import("./lockup.js"),
  settle: () => import("./asks.js"),
  stopped: () => import("./stopped.js"),
  table: () => import("./table.js"),
  wrong: () => import("./wrong.js"),
};
const REST_MS = 6000;
const fetched = new Map();

/** The module of that name, fetched once; a failed fetch is tried again at the next wish. */
export function module(name) {
  if (!fetched.has(name)) {
    const wish = Promise.all([MODULES[name](), openWords("en.sheets")]).then(([found]) => found).catch((error) => { fetched.delete(name); throw error; });
    fetched.set(name, wish);
  }
  return fetched.get(name);
}

const from = (name, action) => async (...facts) => (await module(name))[action](...facts);

export const calledAway = from("away", "calledAway");
export const openCount = from("badpiece", "openCount");
export const openFirstPiece = from("firstpiece", "openFirstPiece");
export const openHowMany = from("away", "openHowMany");
export const openLoadSheet = from("load", "openLoadSheet");
export const openLockUp = from("lockup", "openLockUp");
export const openNotThis = from("wrong", "openNotThis");
export const openStopped = from("stopped", "openStopped");
export const openWrong = from("wrong", "openWrong");

/** Fetches the rest when the page has come to rest. */
export function fetchRest() {
  setTimeout(() => Object.keys(MODULES).forEach((name) => module(name).catch(() => {})), REST_MS);
}
