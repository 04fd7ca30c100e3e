// A helper's presses: the envelope of an event, the last press, and how it is taken back.

import { offsetMs } from "../door/clock.js";
import { deviceId, freshId, put } from "../door/outbox.js";
import { recall, remember } from "../door/remembered.js";
import { tray } from "./tray.js";

const LAST = "runboard.helper.last";

/** Records one press. `drafts` say kind and body; which load, step and tray they are about, the tray says. */
export function press(label, drafts) {
  const id = freshId();
  const phone = Date.now();
  const events = drafts.map((draft, index) => envelope(index ? `${id}.${index + 1}` : id, phone, { ...tray().about, ...draft }));
  remember(LAST, JSON.stringify({ id, label, at: phone }));
  document.getElementById("said").textContent = label;
  void put(id, label, events);
}

const envelope = (id, phone, fields) => ({
  id, v: 2, basis: "tapped", body: {}, ...fields,
  person: tray().person, device: deviceId(), at: new Date(phone).toISOString(), offset_ms: offsetMs(), seen: tray().seq,
});

/** The last press of this phone, or null. */
export const lastPress = () => JSON.parse(recall(LAST) ?? "null");

/** A press that was taken back or refused is none to take back. */
export const forgetPress = () => remember(LAST, "null");

/** Takes the last press back. */
export function undo(last, label) {
  forgetPress();
  const id = freshId();
  document.getElementById("said").textContent = label;
  const { run } = tray().about;
  void put(id, label, [envelope(id, Date.now(), { run, kind: "event undone", body: { event: last.id } })]);
}
