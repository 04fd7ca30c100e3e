// What the first sight of Now does without: sheets, what rings, what can go wrong, the page's own fold. Fetched when
// first wanted, and all of it once the page has come to rest, so that it is there when the network is not.

import { keep, kept } from "./outbox.js";
import { redraw } from "./sheet.js";
import { openWords } from "./words.js";

const MODULES = {
  alarm: () => import("./alarm.js"),
  alerts: () => import("./alerts.js"),
  awake: () => import("./awake.js"),
  away: () => import("./away.js"),
  below: () => import("./below.js"),
  badpiece: () => import("./badpiece.js"),
  early: () => import("./early.js"),
  finish: () => import("./finish.js"),
  handing: () => import("./handing.js"),
  hearing: () => import("./hearing.js"),
  firstpiece: () => import("./firstpiece.js"),
  load: () => import("./load_sheet.js"),
  lockup: () => import("./lockup.js"),
  positions: () => import("./positions.js"),
  others: () => import("./others.js"),
  said: () => import("./said.js"),
  settle: () => import("./asks.js"),
  span: () => import("./span.js"),
  startlist: () => import("./startlist.js"),
  stopped: () => import("./stopped.js"),
  table: async () => laidOver(await import("./table.js"), await readTable()),
  traylist: () => import("./traylist.js"),
  wrong: () => import("./wrong.js"),
  clock: () => import("./wrong_clock.js"),
};
const REST_MS = 1500;
const fetched = new Map();
const arrived = new Map();

/** The module of that name, fetched once; a failed fetch is tried again at the next wish. */
export function module(name) {
  if (!fetched.has(name)) fetched.set(name, fetchOnce(name).catch((error) => { fetched.delete(name); throw error; }));
  return fetched.get(name);
}

async function fetchOnce(name) {
  const [found] = await Promise.all([MODULES[name](), openWords("en.sheets")]);
  arrived.set(name, found);
  redraw();
  return found;
}

/** The module of that name if it is here; else it is fetched, and the page drawn again when it comes. */
export function part(name) {
  if (!arrived.has(name)) module(name).catch(() => {});
  return arrived.get(name);
}

/** The module of that name if it is here. */
export const here = (name) => arrived.get(name);

const laidOver = ({ overlay }, table) => ({ overlay: (state, events) => overlay(state, events, table) });

async function readTable() {
  try {
    const answer = await fetch("/table.json");
    if (!answer.ok) throw new Error("no table");
    const table = await answer.json();
    keep("table", table);
    return table;
  } catch (error) {
    const table = await kept("table");
    if (!table) throw error;
    return table;
  }
}

const from = (name, action) => async (...facts) => (await module(name))[action](...facts);

export const calledAway = from("away", "calledAway");
export const openCount = from("badpiece", "openCount");
export const openEarly = from("early", "openEarly");
export const openFirstPiece = from("firstpiece", "openFirstPiece");
export const openHowMany = from("away", "openHowMany");
export const openLoadSheet = from("load", "openLoadSheet");
export const openLockUp = from("lockup", "openLockUp");
export const openNotThis = from("wrong", "openNotThis");
export const openSaid = from("said", "openSaid");
export const openStartList = from("startlist", "openStartList");
export const openStopped = from("stopped", "openStopped");
export const openWrong = from("wrong", "openWrong");
const soundOnAtLast = from("alarm", "turnOnSound");
export const turnOnSound = () => soundOnAtLast();

/** Fetches the rest when the page has come to rest. */
export function fetchRest() {
  setTimeout(() => Object.keys(MODULES).forEach(part), REST_MS);
}
