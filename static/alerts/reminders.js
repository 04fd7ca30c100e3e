// Reminders of care: rags of a finish that heats by itself, dust of oiled wood, a cut that burnt. Each is answered by saying
// what was done, and by nothing else.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "../door/clock.js";
import { press } from "../door/press.js";
import { knows, say } from "../door/words.js";
import { careText, signs } from "../views/cautions.js";
import { oneOf, textField } from "../views/controls.js";
import { button } from "../views/sheet.js";

// The answers that each kind of reminder offers, by what it is about.
const READY = ["reminder-ready-can", "reminder-ready-outdoors"];
const GONE = {
  rags: ["care-rags-done-outdoors", "care-rags-done-water", "care-rags-done-none"],
  dust: ["care-dust-done-water", "care-dust-done-none"],
  smoulder: ["care-smoulder-done-outdoors", "reminder-done-no-glow"],
};
const COLD = { rags: ["care-rags-done-looked"], dust: ["care-rags-done-looked"], smoulder: ["care-smoulder-done-cold"] };
const LEAST = 4; // letters that say something

const parts = (reminder) => {
  const [kind, thing, day, finish] = reminder.split("|");
  return { kind, thing, key: [thing, day, finish].join("|") };
};

/** The reminder's text, by what the server says which it is; '' while the catalogue is on its way. */
export function reminderText(state, reminder) {
  const { kind, thing } = parts(reminder);
  return careText(state.reminder_texts?.[kind]?.[thing] ?? "rags-end");
}

function answersTo(reminder) {
  const { kind, thing } = parts(reminder);
  const found = kind === "care start" ? READY : ["care again", "care morning"].includes(kind) ? COLD[thing] : GONE[thing];
  careText("rags-done-water"); // the answers come with the texts
  return (found ?? []).filter(knows).map((id) => say(id));
}

/** The event that says what was done. */
const doneDraft = (reminder, done) => ({ kind: "reminder answered", body: { reminder, done } });

// What somebody types for 'something else', until it is sent.
const typed = new Map();

/** A reminder with all its answers; one press answers it, and those before it about the same thing. */
export function reminderPanel({ state }, due) {
  const text = typed.get(due.id) ?? "";
  const did = (done) => { typed.delete(due.id); press(say("did-reminder", { done }), [due.id, ...earlier(state, due.id)].map((id) => doneDraft(id, done))); };
  return html`<div class="stack">${answersTo(due.id).map((done) => button(done, () => did(done)))}</div>
    <details><summary>${say("reminder-else")}</summary>${textField(say("reminder-what"), text, (words) => { typed.set(due.id, words); })}
      <button type="button" class="full" ?disabled=${text.trim().length < LEAST} @click=${() => did(text.trim())}>${say("reminder-did-it")}</button></details>`;
}

/** Its text with the sign for what can burn. */
export const reminderTitle = (state, reminder) => html`<p class="reminder">${signs(["W021"])}<span>${reminderText(state, reminder)}</span></p>`;

// Saying where the rags are answers the question whether a place for them was ready.
const earlier = (state, reminder) => openOf(state, reminder).filter((id) => id.startsWith("care start") || (reminder.startsWith("care lock-up") && id.startsWith("care end")));

const openOf = (state, reminder) =>
  (state.dues ?? []).map((due) => due.id).filter((id) => id !== reminder && id.startsWith("care ") && parts(id).key === parts(reminder).key && isPast(state, id));

const isPast = (state, id) => millis(state.dues.find((due) => due.id === id).due_at) <= now();

// The closing checklist

/** What must be said before a session ends; mirrors lock_up_reminders of runboard/run/care/care.py. */
export function lockUpReminders(state) {
  const isSaidOf = (kind, key, entry) => `${kind}|${key}|${entry.last_by}` in (state.reminders ?? {});
  return Object.entries(state.care ?? {})
    .filter(([key, entry]) => entry.heats || state.finishes?.[key.split("|")[2]]?.self_heats)
    .filter(([key, entry]) => !isSaidOf("care morning", key, entry) && !isSaidOf("care lock-up", key, entry))
    .map(([key, entry]) => `care lock-up|${key}|${entry.last_by}`);
}

/** One of the answers, chosen and not sent yet: `said` maps a reminder to what was done. */
export function reminderChoice(state, reminder, said) {
  const answers = answersTo(reminder);
  const own = said.get(reminder);
  const other = own !== undefined && !answers.includes(own);
  const choose = (done) => { said.set(reminder, done); };
  return html`<section class="asked">${reminderTitle(state, reminder)}
    ${oneOf(say("reminder-what"), [...answers.map((done) => [done, done]), ["", say("reminder-else")]], other ? "" : own, choose)}
    ${other ? textField(say("reminder-what"), own, choose) : nothing}</section>`;
}

export const isSaid = (reminder, said) => (said.get(reminder) ?? "").trim().length >= LEAST;

/** The events that say so, with what was still open about the same thing. */
export const saidDrafts = (state, said) =>
  [...said].flatMap(([reminder, done]) => [reminder, ...earlier(state, reminder)].map((id) => doneDraft(id, done.trim())));
