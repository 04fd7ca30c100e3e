// The shop's state on this page: the server's, with this phone's own unsent presses laid over it. It is kept here and
// nowhere else, and nobody changes it: a press goes to the outbox, and comes back from there.

import { learn, setZone } from "./clock.js";
import { drainSoon, heard, keep, kept, onOutbox, pressOf, shows, unseen } from "./outbox.js";
import { asked, polling } from "./poll.js";
import { recall, remember } from "./remembered.js";
import { listen } from "./stream.js";

const BETWEEN_MS = 200;
const UNDONE_MS = 2000;
const FIRST_SIGHT_MS = 200;
const LEAST_PATIENCE_MS = 40;
const REST_MS = 3000;
const listeners = new Set();
const pollSoon = polling(poll);
let state = null;
let shown = null;
let etag = "";
let reached = true;
let mayHear;

export const onShop = (listener) => listeners.add(listener);
export const shop = () => shown;
export const seq = () => state?.seq ?? 0;
export const serverReached = () => reached;

export const me = () => recall("runboard.person") || document.querySelector("[data-person]")?.dataset.person || "";

/** 'You are …' */
export function become(person) {
  sayWho(person);
  etag = "";
  show();
  void pollSoon();
}

function sayWho(person) {
  remember("runboard.person", person);
  document.cookie = `person=${encodeURIComponent(person)}; path=/; max-age=31536000; SameSite=Strict`; // the forms ask it
}

/** Opens the state: the last one kept, then the server's, then on and on. `hears` says whether this page may sound. */
export async function openShop(hears = () => false) {
  mayHear = hears;
  void useNewVersion();
  onOutbox(show);
  document.addEventListener("visibilitychange", pollSoon);
  window.addEventListener("online", pollSoon);
  // A server that does not answer must not keep a screen empty that could show what it showed last.
  const patience = Math.max(LEAST_PATIENCE_MS, FIRST_SIGHT_MS - performance.now());
  await Promise.race([pollSoon(), new Promise((over) => setTimeout(over, patience))]);
  if (!state) take(await kept("state"));
  listen(() => { void pollSoon(); drainSoon(); });
  setTimeout(() => import("./install.js").then((found) => found.keepForOffline()).catch(() => {}), REST_MS);
}

// Asked before anything else: a version that is found later, while the page is being worked, waits.
async function useNewVersion() {
  const registration = window.isSecureContext ? await navigator.serviceWorker?.getRegistration() : undefined;
  if (registration?.waiting) (await import("./install.js")).changeOver(registration.waiting);
}

/** Gives the milliseconds to the next poll where that is to be soon. */
async function poll() {
  const sent = Date.now();
  try {
    const answer = await asked(`/state?person=${encodeURIComponent(me())}${!document.hidden && mayHear?.() ? "&hears" : ""}`, etag);
    const fresh = answer.status === 200 ? await answer.json() : null;
    if (fresh) learn(sent, Date.now(), fresh.now);
    const between = Boolean(fresh && isBetween(fresh));
    if (fresh && !between) {
      etag = answer.headers.get("ETag") ?? "";
      take(fresh);
      void keep("state", fresh);
    }
    heard(answer.status);
    // Nothing was ever shown here that could be worked with: then pairing is all there is to do.
    if (answer.status === 401 && !state && !(await kept("state"))) location.assign("/pair");
    setReached([200, 304, 401].includes(answer.status));
    return between ? BETWEEN_MS : undefined;
  } catch {
    setReached(false);
    return undefined;
  }
}

// A state that has a press of this phone but not yet its undo would show for a moment what was just taken back.
function isBetween(fresh) {
  const left = unseen(fresh.seq);
  const gone = (event) => event.kind === "event undone" && Date.now() - Date.parse(event.at) < UNDONE_MS && !left.some((other) => pressOf(other.id) === event.body.event);
  return Boolean(state) && left.some(gone);
}

function setReached(yes) {
  if (reached !== yes) { reached = yes; show(); }
}

function take(fresh) {
  if (!fresh) return;
  state = fresh;
  shows(fresh.seq);
  for (const [id, run] of Object.entries(fresh.runs ?? {})) run.id = id;
  setZone(fresh.shop?.zone);
  if (!fresh.people?.[me()]) choosePerson(fresh);
  else if (!recall("runboard.person")) sayWho(me()); // else what a form says is nobody's, and 'Undo' takes back another press
  show();
}

function choosePerson(fresh) {
  const people = Object.entries(fresh.people ?? {});
  const [first] = people.find(([, person]) => person.access === "lead") ?? people[0] ?? [];
  if (first) become(first);
}

function show() {
  if (!state) return;
  shown = withOwn(state, unseen(state.seq));
  listeners.forEach((listener) => listener(shown));
}

function withOwn(base, events) {
  const undone = new Set(events.filter((event) => event.kind === "event undone").map((event) => event.body.event));
  const left = events.filter((event) => !undone.has(pressOf(event.id)));
  if (!left.length) return base;
  if (!overlay) void fetchOverlay();
  return overlay ? overlay(base, left) : base;
}

let overlay = null;
let fetching = null;

/** The page's own fold: wanted only while presses are on their way. */
export function fetchOverlay() {
  fetching ??= import("./overlay.js").then((found) => found.openOverlay()).then(
    (found) => { overlay = found; show(); },
    () => { fetching = null; },
  );
  return fetching;
}
