// A look at a machine that runs and must be watched: one press on a phone or on the wall. It shows that somebody answered;
// it is no fire watch, and nothing here lets anybody leave.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { careText } from "../views/cautions.js";
import { handsOf, isWatch, ringing } from "../views/doing.js";
import { openStopped } from "../door/later.js";
import { about, answer, press } from "../door/press.js";
import { loadTitle, say } from "../door/words.js";

/** Somebody looked: answers all that asks for a look at this machine. */
export function looked(state, load, person) {
  const asked = ringing(state).filter((due) => isWatch(due) && due.run === load.run && due.load === load.id && !due.said);
  const checked = { kind: "watch checked", ...about(load), person, body: { at_check: load.checks ?? 0 } };
  const left = elsewhere(state, load, person);
  const aside = left ? [{ kind: "load put aside", ...about(left), person }] : [];
  return press(say("did-watch-checked"), [...aside, checked, ...asked.map((due) => ({ ...answer(due, "seen"), person }))]);
}

/** What my hands are at, where this machine cannot be watched from: it is put aside first. */
function elsewhere(state, load, person) {
  const at = handsOf(state, person)?.load;
  return at && !(at.run === load.run && at.id === load.id) && !state.stations?.[load.station]?.watch_ok?.includes(at.station) ? at : null;
}

/** 'I looked: no flame …': what is looked at is the station's own, as a CNC has no air assist. */
export const lookWords = (state, due) => say(due.kind === "nobody near" ? "alert-near-go" : "alert-watch-go", { kind: state.stations?.[due.station]?.kind ?? "" });

const aside = (left, state) => (left ? html`<p>${say("watch-aside", { load: loadTitle(state.runs[left.run], left) })}</p>` : nothing);

export const watchAnswers = ({ state, me }, due, load) => html`
  ${aside(elsewhere(state, load, me), state)}
  <button type="button" class="go" @click=${() => looked(state, load, me)}>${lookWords(state, due)}</button>
  <p class="soft">${careText("watch-note")} ${careText("never-leave")}</p>
  <div class="pair"><button type="button" class="danger" @click=${() => openStopped(load)}>${say("alert-stopped")}</button></div>`;
