// A press: one or several events made here, with everything the envelope asks.

import { now as serverNow, offsetMs } from "./clock.js";
import { deviceId, freshId, put } from "./outbox.js";
import { me, seq, shop } from "./shop.js";

const REMEMBER = 20;
const OLD_MS = 12 * 3_600_000;

/**
 * Records one press. `drafts` are events without envelope: kind, and where they apply run, load, tray, operation,
 * station, body, minutesAgo or at (server ms), basis, person.
 */
export function press(label, drafts) {
  const id = freshId();
  const phone = Date.now();
  const events = drafts.map((draft, index) => envelope(id, index, phone, draft));
  remember({ id, label, at: phone, person: me() });
  document.getElementById("said").textContent = label;
  void put(id, label, events);
  return id;
}

function envelope(id, index, phone, { minutesAgo = 0, at, ...draft }) {
  const moment = at === undefined ? phone - minutesAgo * 60_000 : at - offsetMs();
  return {
    id: index ? `${id}.${index + 1}` : id,
    v: 1,
    run: "",
    person: me(),
    basis: "tapped",
    body: {},
    ...draft,
    device: deviceId(),
    at: new Date(moment).toISOString(),
    offset_ms: offsetMs(),
    seen: seq(),
  };
}

const read = () => JSON.parse(localStorage.getItem("runboard.presses") ?? "[]");
const write = (presses) => localStorage.setItem("runboard.presses", JSON.stringify(presses.slice(-REMEMBER)));

function remember(one) {
  write([...read(), one]);
}

/** The press that 'Undo' takes back: this phone's last, or the person's last from another phone. */
export function lastPress() {
  const mine = read().filter((one) => one.person === me() && Date.now() - one.at < OLD_MS);
  const last = shop()?.people?.[me()]?.last?.replace(/\.\d+$/, "");
  if (last && last !== mine.at(-1)?.id && !read().some((one) => one.id === last) && !undone().includes(last)) {
    return mine.length ? mine.at(-1) : { id: last, label: "", at: 0 };
  }
  return mine.at(-1) ?? null;
}

const undone = () => JSON.parse(localStorage.getItem("runboard.undone") ?? "[]");

/** Takes back a whole press. */
export function undo(one, label) {
  write(read().filter((other) => other.id !== one.id));
  localStorage.setItem("runboard.undone", JSON.stringify([...undone(), one.id].slice(-REMEMBER)));
  const id = freshId();
  document.getElementById("said").textContent = label;
  void put(id, label, [envelope(id, 0, Date.now(), { kind: "event undone", body: { event: one.id } })]);
}

/** A refused press is no press: it is not what 'Undo' takes back. */
export function forget(id) {
  write(read().filter((one) => one.id !== id));
}

export const isoIn = (minutes) => new Date(serverNow() + minutes * 60_000).toISOString();
