// The presses that wait on this phone: made events here, kept in IndexedDB, sent in order, never dropped. Those that the
// storage does not take live in the open page, which says so. What waits is seen laid over the state, until the state has it.

import { openDB } from "../vendor/idb-8.0.4.js";
import { learn, offsetMs } from "./clock.js";
import { recall, remember } from "./remembered.js";

const BATCH = 100;
const PATIENCE_MS = 2000;
const listeners = new Set();
let entries = [];
let answered = [];
let database = null;
let drainTimer = 0;
let waitMs = 1000;
let draining = false;
let again = false;
let trouble = "";
let unsaved = "";
const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("runboard") : null;

/** Random id; crypto.randomUUID is missing on plain http. */
function freshId() {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => (byte % 36).toString(36) + (byte >> 4).toString(16)).join("");
}

function deviceId() {
  const known = recall("runboard.device");
  if (!known) remember("runboard.device", `d-${freshId()}`);
  return known ?? recall("runboard.device");
}

// What the storage did not do when it was last asked to: "read", "taps", "put away", "kept".
const full = new Set();
// What was not kept, by its key: tried again with the presses.
const unkept = new Map();

async function tried(what, action) {
  const before = full.has(what);
  try {
    database ??= await opened();
    const found = await action();
    full.delete(what);
    return found;
  } catch (error) {
    if (error?.name === "InvalidStateError") database = null; // the browser closed it; the next try opens it again
    full.add(what);
    return undefined;
  } finally {
    if (before !== full.has(what)) tell();
  }
}

const opened = () =>
  openDB("runboard", 1, {
    upgrade(db) {
      db.createObjectStore("taps", { keyPath: "n", autoIncrement: true });
      db.createObjectStore("kept");
    },
    terminated() { database = null; },
  });

export async function openOutbox() {
  // A storage that does not answer must not keep the screen empty; what it holds is shown when it does.
  await Promise.race([reread(), new Promise((over) => setTimeout(over, PATIENCE_MS))]);
  navigator.storage?.persist?.().catch(() => {});
  channel?.addEventListener("message", () => reread());
  for (const [target, name] of [[document, "visibilitychange"], [window, "online"], [window, "pageshow"]]) {
    target.addEventListener(name, () => drainSoon());
  }
  window.addEventListener("beforeunload", (event) => { if (onlyHere().length) event.preventDefault(); });
  drainSoon();
}

async function reread() {
  const stored = await tried("read", () => database.getAll("taps"));
  // In the order in which they were pressed, whether the storage took them or not.
  if (stored) entries = [...stored, ...onlyHere()].sort((one, other) => (one.made ?? 0) - (other.made ?? 0));
  tell();
}

const tell = () => listeners.forEach((listener) => listener());
export const onOutbox = (listener) => listeners.add(listener);
export const outboxTrouble = () => trouble;

/** What the server answered, to whatever was asked: whether it knows this device. */
export function heard(status) {
  const before = trouble;
  trouble = status === 401 || status === 403 ? "pair" : trouble === "pair" ? "" : trouble;
  if (trouble !== before) tell();
}
/** Whether this phone's storage takes nothing: it is full, or shut off. */
export const storageFull = () => full.size > 0;
/** Presses that live only as long as this page is open. */
export const onlyHere = () => entries.filter((entry) => entry.onlyHere);
/** Why the server could not store what was sent, in its own sentence; the presses stay here. */
export const notSaved = () => unsaved;
export const refused = () => entries.filter((entry) => entry.refused);
export const waiting = () => entries.filter((entry) => !entry.refused);

/** Events of this phone that the state of `seq` does not hold yet, oldest first. */
export const unseen = (seq) => [...answered.filter((entry) => entry.seq > seq), ...waiting()].map((entry) => entry.event);

/** The page shows the state of `seq` from now on: what it holds need not be laid over it again. */
export const shows = (seq) => { answered = answered.filter((entry) => entry.seq > seq); };

/** 'saved here', 'only here', 'sent' or 'refused' for a press. */
export function pressState(press) {
  const mine = entries.filter((entry) => entry.press === press);
  if (mine.some((entry) => entry.refused)) return "refused";
  if (mine.some((entry) => entry.onlyHere)) return "only here";
  return mine.length ? "saved here" : "sent";
}

/** The press that an event belongs to: X for X, X.2, X.3. */
export const pressOf = (id) => id.replace(/\.\d+$/, "");

/**
 * Makes one press, says its `label`, and keeps it to be sent. `drafts` are events without their envelope, as they come: with
 * `minutesAgo` or `at` (the server's ms) where it was not now. Gives its id.
 */
export function put(label, drafts, seen) {
  const id = freshId();
  const phone = Date.now();
  const events = drafts.map(({ minutesAgo = 0, at, ...draft }, index) => ({
    v: 2, basis: "tapped", body: {}, ...draft, id: index ? `${id}.${index + 1}` : id, device: deviceId(),
    at: new Date(at === undefined ? phone - minutesAgo * 60_000 : at - offsetMs()).toISOString(), offset_ms: offsetMs(), seen,
  }));
  document.getElementById("said").textContent = label;
  void store(id, label, events);
  return id;
}

async function store(press, label, events) {
  const made = Date.now();
  for (const [index, event] of events.entries()) {
    const entry = { press, label, event, made: made + index / 100 };
    await save(entry);
    if (!entries.some((entry) => entry.event.id === event.id)) entries.push(entry);
  }
  channel?.postMessage("put");
  tell();
  drainSoon();
}

async function save(entry) {
  const { onlyHere: _, ...record } = entry;
  const n = await tried("taps", () => database.add("taps", record));
  if (n === undefined) entry.onlyHere = true;
  else {
    delete entry.onlyHere;
    entry.n = n;
  }
}

/** Puts away a refused press that the person has read. */
export async function dismiss(press) {
  for (const entry of entries.filter((entry) => entry.press === press && entry.refused)) await remove(entry);
  channel?.postMessage("dismissed");
  tell();
}

async function remove(entry) {
  // One that cannot be put away is sent again, and known.
  if (entry.n !== undefined) await tried("put away", () => database.delete("taps", entry.n));
  entries = entries.filter((kept) => kept.event.id !== entry.event.id);
}

export function drainSoon(ms = 0) {
  clearTimeout(drainTimer);
  drainTimer = setTimeout(drain, ms);
}

async function drain() {
  if (draining) return void (again = true);
  draining = true;
  try {
    // Web Locks let one tab send at a time, so that the order holds; without them the server's idempotence is enough.
    if (navigator.locks) await navigator.locks.request("runboard-outbox", sendAll);
    else await sendAll();
    waitMs = 1000;
  } catch {
    tell();
    drainSoon(waitMs * (0.8 + Math.random() * 0.4));
    waitMs = Math.min(waitMs * 2, 30_000);
  } finally {
    draining = false;
    if (again) { again = false; drainSoon(); }
  }
}

async function sendAll() {
  for (const entry of onlyHere()) await save(entry);
  for (const [key, value] of unkept) await keep(key, value);
  await reread();
  for (let batch = next(BATCH); batch.length; batch = next(BATCH)) {
    const answer = await post(batch);
    if (answer.status === 400 && batch.length > 1) {
      for (const entry of batch) await settle([entry], await post([entry]));
    } else {
      await settle(batch, answer);
    }
    channel?.postMessage("sent");
    tell();
  }
}

const next = (size) => waiting().slice(0, size);

async function post(batch) {
  const sent = Date.now();
  const answer = await fetch("/taps", {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ device: deviceId(), sent_at: new Date(sent).toISOString(), taps: batch.map((entry) => entry.event) }),
    signal: AbortSignal.timeout?.(10_000),
  });
  const body = await answer.json().catch(() => ({}));
  if (body.now) learn(sent, Date.now(), body.now);
  return { status: answer.status, body };
}

async function settle(batch, { status, body }) {
  heard(status);
  unsaved = status >= 429 ? (body.sentence ?? "") : "";
  if (status === 400) return refuse(batch[0], { sentence: body.sentence, code: "bad form" });
  if (status !== 200) throw new Error(`taps answered ${status}`);
  const answers = new Map((body.taps ?? []).map((tap) => [tap.id, tap]));
  for (const entry of batch) {
    const answer = answers.get(entry.event.id);
    if (!answer) throw new Error("a tap without an answer");
    if (answer.answer === "refused") await refuse(entry, answer);
    else {
      await remove(entry);
      answered.push({ ...entry, seq: body.seq });
    }
  }
}

async function refuse(entry, { code, facts, sentence }) {
  entry.refused = { code, facts, sentence };
  if (entry.n !== undefined) await tried("taps", () => database.put("taps", entry));
  entries = entries.map((kept) => (kept.event.id === entry.event.id ? entry : kept));
}

/** What was kept for the next opening without a network. */
export const kept = (key) => tried("read", () => database.get("kept", key));
export async function keep(key, value) {
  unkept.set(key, value);
  if (await tried("kept", () => database.put("kept", value, key)) && unkept.get(key) === value) unkept.delete(key);
}
