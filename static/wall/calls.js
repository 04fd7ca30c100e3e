// What wants somebody, on top and large. Only a look at a watched machine can be confirmed here, with one press that says
// who answers: whoever stands before the wall may see that machine.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { each, titleOf } from "../alerts/alerts.js";
import { careText } from "../views/cautions.js";
import { moment } from "../door/clock.js";
import { inSession, isDanger, isWatch, loadAt } from "../views/doing.js";
import { loadTitle, personName, roomName, say } from "../door/words.js";
import { looked, lookWords } from "../alerts/watching.js";

const MOST = 3;

export function calls(state, due, person) {
  if (!due.length) return nothing;
  const all = each(due).sort((one, other) => urgency(state, other) - urgency(state, one));
  const shown = all.slice(0, MOST);
  return html`<div class="all-calls" role="alert" aria-live="assertive">
    ${shown.map((one) => call(state, one, person))}
    ${all.length > shown.length ? html`<p class="more">${say("wall-more", { count: all.length - shown.length })}</p>` : nothing}</div>`;
}

const urgency = (state, due) => 2 * isDanger(due, state) + isWatch(due);

function call(state, due, person) {
  const load = loadAt(state, [due.run, due.load]);
  const where = [load && loadTitle(state.runs[load.run], load), roomName(state, state.stations?.[due.station]?.room)].filter(Boolean).join(" · ");
  return html`<section class="call ${isDanger(due, state) ? "red" : "act"}">
    <div><p class="title">${titleOf(state, due)}</p>${where ? html`<p class="where">${where}</p>` : nothing}
      ${isWatch(due) ? html`<p class="where">${careText("watch-note")}</p>` : nothing}</div>
    ${isWatch(due) && load ? answers(state, due, load, person) : html`<time>${moment(due.due_at)}</time>`}</section>`;
}

function answers(state, due, load, person) {
  const who = load.watcher || person;
  const others = Object.keys(state.people ?? {}).filter((key) => key !== who && inSession(state, key));
  return html`<div class="answers"><button type="button" class="go" @click=${() => looked(state, load, who)}>
      ${lookWords(state, due)}<small>${personName(state, who)}</small></button>
    ${others.map((key) => html`<button type="button" @click=${() => looked(state, load, key)}>${say("wall-answers", { person: personName(state, key) })}</button>`)}</div>`;
}
