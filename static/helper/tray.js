// The helper's tray on this page: asked for again and again, with this phone's own unsent presses laid over it.

import { learn, millis, setZone } from "../door/clock.js";
import { drainSoon, heard, keep, kept, onOutbox, unseen } from "../door/outbox.js";

const VISIBLE_MS = 2000;
const HIDDEN_MS = 15_000;
const KEPT = "helper";
const listeners = new Set();
let state = null;
let etag = "";
let timer = 0;
let reached = true;
let over = "";

export const onTray = (listener) => listeners.add(listener);
export const tray = () => state;
export const serverReached = () => reached;
/** Why this phone's help has ended, in a sentence; '' while it has not. */
export const ended = () => over;

const tell = () => listeners.forEach((listener) => listener());

/** Opens the tray: the last state kept where the server does not answer, else the server's, then on and on. */
export async function openTray() {
  onOutbox(() => { tell(); if (!over) askSoon(); });
  document.addEventListener("visibilitychange", () => askSoon());
  await ask();
  if (!state && !over) take(await kept(KEPT));
}

let asking = false;
let again = false;

function askSoon() {
  if (asking) again = true;
  else void ask();
}

async function ask() {
  clearTimeout(timer);
  asking = true;
  const sent = Date.now();
  try {
    const answer = await fetch("/helper/state", {
      headers: etag ? { "If-None-Match": etag } : {}, cache: "no-store", signal: AbortSignal.timeout?.(8000),
    });
    await hear(answer, sent);
    reached = true;
  } catch {
    reached = false;
  } finally {
    asking = false;
    timer = setTimeout(ask, again ? 200 : document.hidden ? HIDDEN_MS : VISIBLE_MS);
    again = false;
    tell();
  }
}

async function hear(answer, sent) {
  heard(answer.status);
  if (answer.status === 200) {
    const fresh = await answer.json();
    learn(sent, Date.now(), fresh.now);
    etag = answer.headers.get("ETag") ?? "";
    if (over) drainSoon();
    over = "";
    take(fresh);
    void keep(KEPT, fresh);
  } else if ([401, 403, 404].includes(answer.status)) {
    const body = await answer.json().catch(() => ({}));
    over = body.sentence ?? "";
    etag = "";
  }
}

function take(fresh) {
  if (!fresh) return;
  state = fresh;
  setZone(fresh.zone);
}

const pressOf = (id) => id.replace(/\.\d+$/, "");

/** How the load stands with what was pressed here and is not in the server's state yet: its state, and those presses. */
export function standing() {
  const events = unseen(state.seq);
  const undone = new Set(events.filter((one) => one.kind === "event undone").map((one) => one.body.event));
  const own = events.filter((one) => one.load === state.about.load && !undone.has(pressOf(one.id)));
  return { at: own.reduce((at, one) => state.after?.[one.kind] ?? at, state.at), own };
}

/** When this helper has to look at the running machine next, or null where nobody asks them to. */
export function nextLook({ at, own }) {
  const watch = state.watch;
  if (at !== "running" || !watch?.mine) return null;
  const said = own.filter((one) => ["machine started", "watch checked"].includes(one.kind));
  const last = Math.max(millis(watch.checked_at) || 0, ...said.map((one) => Date.parse(one.at) + (one.offset_ms ?? 0)));
  return { due: last + watch.every_ms, check: watch.check + said.filter((one) => one.kind === "watch checked").length };
}
