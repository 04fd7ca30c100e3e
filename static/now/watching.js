// A look at a machine that runs and must be watched: one press on a phone or on the wall. It shows that somebody answered;
// it is no fire watch, and nothing here lets anybody leave.

import { html } from "../vendor/lit-html-3.3.3.js";
import { careText } from "./cautions.js";
import { isWatch, ringing } from "./doing.js";
import { openStopped } from "./later.js";
import { about, answer, press } from "./press.js";
import { say } from "./words.js";

/** Somebody looked: answers all that asks for a look at this machine. */
export function looked(state, load, person) {
  const asked = ringing(state).filter((due) => isWatch(due) && due.run === load.run && due.load === load.id);
  const checked = { kind: "watch checked", ...about(load), person, body: { at_check: load.checks ?? 0 } };
  return press(say("did-watch-checked"), [checked, ...asked.map((due) => ({ ...answer(due, "seen"), person }))]);
}

export const lookWords = (due) => say(due.kind === "nobody near" ? "alert-near-go" : "alert-watch-go");

export const watchAnswers = ({ state, me }, due, load) => html`
  <button type="button" class="go" @click=${() => looked(state, load, me)}>${lookWords(due)}</button>
  <p class="soft">${careText("watch-note")} ${careText("never-leave")}</p>
  <div class="pair"><button type="button" class="danger" @click=${() => openStopped(load)}>${say("alert-stopped")}</button></div>`;
