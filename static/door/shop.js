// The shop's state on this page: polled, with this phone's own unsent presses laid over it.

import { learn, setZone } from "./clock.js";
import { module } from "./later.js";
import { drainSoon, heard, keep, kept, onOutbox, shows, unseen } from "./outbox.js";
import { recall, remember } from "./remembered.js";
import { listen } from "./stream.js";

const VISIBLE_MS = 2000;
const HIDDEN_MS = 15_000;
const FIRST_SIGHT_MS = 200;
const LEAST_PATIENCE_MS = 40;
const REST_MS = 3000;
const listeners = new Set();
let state = null;
let shown = null;
let etag = "";
let timer = 0;
let polling = false;
let hinted = false;
let between = false;
let reached = true;
let mayHear;

export const onShop = (listener) => listeners.add(listener);
export const shop = () => shown;
export const seq = () => state?.seq ?? 0;
export const serverReached = () => reached;

export const me = () => recall("runboard.person") || document.querySelector("[data-person]")?.dataset.person || "";

/** 'You are …' */
export function become(person) {
  remember("runboard.person", person);
  document.cookie = `person=${encodeURIComponent(person)}; path=/; max-age=31536000; SameSite=Strict`; // the forms ask it
  etag = "";
  redraw();
  pollSoon();
}

/** Opens the state: the last one kept, then the server's, then on and on. `hears` says whether this page may sound. */
export async function openShop(hears = () => false) {
  mayHear = hears;
  void useNewVersion();
  onOutbox(redraw);
  document.addEventListener("visibilitychange", () => pollSoon());
  window.addEventListener("online", () => pollSoon());
  // A server that does not answer must not keep a screen empty that could show what it showed last.
  const patience = Math.max(LEAST_PATIENCE_MS, FIRST_SIGHT_MS - performance.now());
  await Promise.race([poll(), new Promise((over) => setTimeout(over, patience))]);
  if (!state) take(await kept("state"));
  listen(() => { pollSoon(); drainSoon(); });
  setTimeout(() => import("./install.js").then((found) => found.keepForOffline()).catch(() => {}), REST_MS);
}

// Asked before anything else: a version that is found later, while the page is being worked, waits.
async function useNewVersion() {
  const registration = window.isSecureContext ? await navigator.serviceWorker?.getRegistration() : undefined;
  if (registration?.waiting) (await import("./install.js")).changeOver(registration.waiting);
}

function pollSoon() {
  if (polling) hinted = true;
  else void poll();
}

async function poll() {
  clearTimeout(timer);
  polling = true;
  const sent = Date.now();
  try {
    const answer = await fetch(`/state?person=${encodeURIComponent(me())}${!document.hidden && mayHear?.() ? "&hears" : ""}`, {
      headers: etag ? { "If-None-Match": etag } : {},
      cache: "no-store",
      signal: AbortSignal.timeout?.(8000),
    });
    if (answer.status === 200) {
      const fresh = await answer.json();
      learn(sent, Date.now(), fresh.now);
      between = isBetween(fresh);
      if (!between) {
        etag = answer.headers.get("ETag") ?? "";
        take(fresh);
        keep("state", fresh);
      }
    }
    heard(answer.status);
    // Nothing was ever shown here that could be worked with: then pairing is all there is to do.
    if (answer.status === 401 && !state && !(await kept("state"))) location.assign("/pair");
    setReached([200, 304, 401].includes(answer.status));
  } catch {
    setReached(false);
  } finally {
    polling = false;
    const soon = between ? FIRST_SIGHT_MS : hinted ? 0 : document.hidden ? HIDDEN_MS : VISIBLE_MS;
    hinted = false;
    timer = setTimeout(poll, soon);
  }
}

// A state that has a press of this phone but not yet its undo would show for a moment what was just taken back.
function isBetween(fresh) {
  const left = unseen(fresh.seq);
  const gone = (one) => one.kind === "event undone" && Date.now() - Date.parse(one.at) < VISIBLE_MS && !left.some((other) => pressOf(other.id) === one.body.event);
  return Boolean(state) && left.some(gone);
}

function setReached(yes) {
  if (reached !== yes) { reached = yes; redraw(); }
}

function take(fresh) {
  if (!fresh) return;
  state = fresh;
  shows(fresh.seq);
  for (const [id, run] of Object.entries(fresh.runs ?? {})) run.id = id;
  setZone(fresh.shop?.zone);
  if (!fresh.people?.[me()]) choosePerson(fresh);
  redraw();
}

function choosePerson(fresh) {
  const people = Object.entries(fresh.people ?? {});
  const [first] = people.find(([, one]) => one.access === "lead") ?? people[0] ?? [];
  if (first) become(first);
}

function redraw() {
  if (!state) return;
  shown = withOwn(state, unseen(state.seq));
  listeners.forEach((listener) => listener(shown));
}

let overlay = null;

// The page's own fold is wanted only while presses are on their way.
function fetchOverlay() {
  module("table").then((found) => { overlay = found.overlay; redraw(); }, () => {});
}

const pressOf = (id) => id.replace(/\.\d+$/, "");

function withOwn(base, events) {
  if (!events.length) return base;
  const undone = new Set(events.filter((one) => one.kind === "event undone").map((one) => one.body.event));
  const left = events.filter((one) => !undone.has(pressOf(one.id)));
  if (!left.length) return base;
  if (!overlay) fetchOverlay();
  return overlay ? overlay(base, left) : base;
}
