// The helper's tray on this page: asked for again and again, with this phone's own unsent presses laid over it; and what
// is pressed about it, which goes to the outbox and comes back from there.

import { learn, millis, setZone } from "../door/clock.js";
import { drainSoon, heard, keep, kept, onOutbox, pressOf, put, unseen } from "../door/outbox.js";
import { asked, polling } from "../door/poll.js";
import { recall, remember } from "../door/remembered.js";

const AGAIN_MS = 200;
const KEPT = "helper";
const LAST = "runboard.helper.last";
const listeners = new Set();
const askSoon = polling(ask, AGAIN_MS);
let state = null;
let etag = "";
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
  onOutbox(() => { tell(); if (!over) void askSoon(); });
  document.addEventListener("visibilitychange", askSoon);
  await askSoon();
  if (!state && !over) take(await kept(KEPT));
}

async function ask() {
  const sent = Date.now();
  try {
    await hear(await asked("/helper/state", etag), sent);
    reached = true;
  } catch {
    reached = false;
  }
  tell();
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

/** How the load stands with what was pressed here and is not in the server's state yet: its state, and those presses. */
export function standing() {
  const events = unseen(state.seq);
  const undone = new Set(events.filter((event) => event.kind === "event undone").map((event) => event.body.event));
  const own = events.filter((event) => event.load === state.about.load && !undone.has(pressOf(event.id)));
  return { at: own.reduce((at, event) => state.after?.[event.kind] ?? at, state.at), own };
}

/** When this helper has to look at the running machine next, or null where nobody asks them to. */
export function nextLook({ at, own }) {
  const watch = state.watch;
  if (at !== "running" || !watch?.mine) return null;
  const said = own.filter((event) => ["machine started", "watch checked"].includes(event.kind));
  const last = Math.max(millis(watch.checked_at) || 0, ...said.map((event) => Date.parse(event.at) + (event.offset_ms ?? 0)));
  return { due: last + watch.every_ms, check: watch.check + said.filter((event) => event.kind === "watch checked").length };
}

/** Records one press. `drafts` say kind and body; which load, step and tray they are about, the tray says. */
export function press(label, drafts) {
  const id = put(label, drafts.map((draft) => ({ ...state.about, ...draft, person: state.person })), state.seq);
  remember(LAST, JSON.stringify({ id, label, at: Date.now() }));
}

/** The last press of this phone, or null. */
export const lastPress = () => JSON.parse(recall(LAST) ?? "null");

/** A press that was taken back or refused is none to take back. */
export const forgetPress = () => remember(LAST, "null");

/** Takes the last press back. */
export function undo(last, label) {
  forgetPress();
  put(label, [{ run: state.about.run, kind: "event undone", body: { event: last.id }, person: state.person }], state.seq);
}
