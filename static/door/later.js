// What the first sight of Now does without: sheets, what rings, what can go wrong, the page's own fold. Fetched when
// first wanted, and all of it once the page has come to rest, so that it is there when the network is not.

import { keep, kept } from "./outbox.js";
import { redraw } from "../views/sheet.js";
import { openWords } from "./words.js";

const MODULES = {
  alarm: () => import("../alerts/alarm.js"),
  alerts: () => import("../alerts/alerts.js"),
  awake: () => import("./awake.js"),
  away: () => import("../sheets/away.js"),
  below: () => import("../views/below.js"),
  badpiece: () => import("../sheets/bad_piece.js"),
  early: () => import("../sheets/early.js"),
  finish: () => import("../views/finish.js"),
  handing: () => import("../views/handing.js"),
  hearing: () => import("../alerts/hearing.js"),
  firstpiece: () => import("../sheets/first_piece.js"),
  load: () => import("../sheets/load.js"),
  lockup: () => import("../sheets/lockup.js"),
  positions: () => import("../views/positions.js"),
  others: () => import("../now/others.js"),
  said: () => import("../alerts/said.js"),
  settle: () => import("../views/asks.js"),
  span: () => import("../now/span.js"),
  startlist: () => import("../sheets/start_list.js"),
  stopped: () => import("../sheets/stopped.js"),
  table: async () => laidOver(await import("../table/fold.js"), await readTable()),
  traylist: () => import("../views/tray_list.js"),
  wrong: () => import("../sheets/wrong.js"),
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
