// The presses that wait on this phone: kept in IndexedDB, sent in order, never dropped.

import { openDB } from "../vendor/idb-8.0.4.js";
import { learn } from "./clock.js";

const BATCH = 100;
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
export function freshId() {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => (byte % 36).toString(36) + (byte >> 4).toString(16)).join("");
}

export function deviceId() {
  let id = localStorage.getItem("runboard.device");
  if (!id) localStorage.setItem("runboard.device", (id = `d-${freshId()}`));
  return id;
}

export async function openOutbox() {
  try {
    database = await openDB("runboard", 1, {
      upgrade(db) {
        db.createObjectStore("taps", { keyPath: "n", autoIncrement: true });
        db.createObjectStore("kept");
      },
    });
    globalThis.navigator.storage?.persist?.();
  } catch {
    trouble = "memory"; // a private window: the queue lives as long as the page
  }
  await reread();
  channel?.addEventListener("message", () => reread());
  for (const [target, name] of [[document, "visibilitychange"], [window, "online"], [window, "pageshow"]]) {
    target.addEventListener(name, () => drainSoon());
  }
  drainSoon();
}

async function reread() {
  if (database) entries = await database.getAll("taps");
  tell();
}

const tell = () => listeners.forEach((listener) => listener());
export const onOutbox = (listener) => listeners.add(listener);
export const outboxTrouble = () => trouble;
/** Why the server could not store what was sent, in its own sentence; the presses stay here. */
export const notSaved = () => unsaved;
export const refused = () => entries.filter((entry) => entry.refused);
export const waiting = () => entries.filter((entry) => !entry.refused);

/** Events of this phone that the state of `seq` does not hold yet, oldest first. */
export function unseen(seq) {
  answered = answered.filter((entry) => entry.seq > seq);
  return [...answered, ...waiting()].map((entry) => entry.event);
}

/** 'saved here', 'sent' or 'refused' for a press. */
export function pressState(press) {
  const mine = entries.filter((entry) => entry.press === press);
  if (mine.some((entry) => entry.refused)) return "refused";
  return mine.length ? "saved here" : "sent";
}

/** Keeps the events of one press and starts to send them. */
export async function put(press, label, events) {
  for (const event of events) {
    const entry = { press, label, event };
    if (database) entry.n = await database.add("taps", entry);
    else entry.n = Date.now() + Math.random();
    entries.push(entry);
  }
  channel?.postMessage("put");
  tell();
  drainSoon();
}

/** Puts away a refused press that the person has read. */
export async function dismiss(press) {
  for (const entry of entries.filter((one) => one.press === press && one.refused)) await remove(entry);
  channel?.postMessage("dismissed");
  tell();
}

async function remove(entry) {
  await database?.delete("taps", entry.n);
  entries = entries.filter((one) => one.n !== entry.n);
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
  if (database) entries = await database.getAll("taps");
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
  trouble = status === 401 || status === 403 ? "pair" : trouble === "pair" ? "" : trouble;
  unsaved = status >= 500 ? (body.sentence ?? "") : "";
  if (status === 400) return refuse(batch[0], { sentence: body.sentence, code: "bad form" });
  if (status !== 200) throw new Error(`taps answered ${status}`);
  const answers = new Map((body.taps ?? []).map((one) => [one.id, one]));
  for (const entry of batch) {
    const one = answers.get(entry.event.id);
    if (!one) throw new Error("a tap without an answer");
    if (one.answer === "refused") await refuse(entry, one);
    else {
      await remove(entry);
      answered.push({ ...entry, seq: body.seq });
    }
  }
}

async function refuse(entry, { code, facts, sentence }) {
  entry.refused = { code, facts, sentence };
  await database?.put("taps", entry);
  entries = entries.map((one) => (one.n === entry.n ? entry : one));
}

/** What was kept for the next opening without a network. */
export const kept = (key) => database?.get("kept", key) ?? Promise.resolve(undefined);
export const keep = (key, value) => database?.put("kept", value, key);
