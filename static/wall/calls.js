// What wants somebody, on top and large. Only a look at a watched machine can be confirmed here, with one press: whoever
// stands before the wall may see that machine.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { titleOf } from "../now/alerts.js";
import { moment } from "../now/clock.js";
import { isDanger, loadAt } from "../now/doing.js";
import { about, answer, press } from "../now/press.js";
import { loadTitle, personName, roomName, say } from "../now/words.js";

const MOST = 3;

export function calls(state, due, person) {
  if (!due.length) return nothing;
  const shown = [...due].sort((one, other) => isDanger(other) - isDanger(one)).slice(0, MOST);
  return html`<div class="all-calls" role="alert" aria-live="assertive">
    ${shown.map((one) => call(state, one, person))}
    ${due.length > shown.length ? html`<p class="more">${say("wall-more", { count: due.length - shown.length })}</p>` : nothing}</div>`;
}

function call(state, due, person) {
  const load = loadAt(state, [due.run, due.load]);
  const where = [load && loadTitle(state.runs[load.run], load), roomName(state, state.stations?.[due.station]?.room)].filter(Boolean).join(" · ");
  return html`<section class="call ${isDanger(due) ? "red" : "act"}">
    <div><p class="title">${titleOf(state, due)}</p>${where ? html`<p class="where">${where}</p>` : nothing}</div>
    ${isDanger(due) && load ? looked(state, due, load, person) : html`<time>${moment(due.due_at)}</time>`}</section>`;
}

function looked(state, due, load, person) {
  const who = load.watcher || person;
  const checked = { kind: "watch checked", ...about(load), person: who, body: { at_check: load.checks ?? 0 } };
  return html`<button type="button" class="go" @click=${() => press(say("did-watch-checked"), [checked, { ...answer(due, "seen"), person: who }])}>
    ${say("alert-watch-go")}<small>${personName(state, who)}</small></button>`;
}
