// What an operation asks first: its cautions, its start list, and the press that starts a machine.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { wantsList } from "./doing.js";
import { about, press, startMachine } from "./press.js";
import { closeSheet, openSheet, redraw, sheetHead, stepper } from "./sheet.js";
import { say } from "./words.js";

/** In type as large as the step, before it. */
export const cautions = (step) =>
  step?.cautions?.length ? html`<p class="cautions">${step.cautions.map(sentence).join(" ")}</p>` : nothing;

const sentence = (text) => text[0].toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

/** Opens the full list. `then(drafts)` is called with the event that notes it; without it the list is noted alone. */
export function openStartList(here, then = (drafts) => press(say("did-list", { station: here.station?.name ?? "" }), drafts), ready = "list-done") {
  const ticked = new Set();
  const points = here.step.checklist;
  const done = () => {
    closeSheet();
    then([{ kind: "checklist ticked", ...about(here.load), body: { list: "full", items: points } }]);
  };
  openSheet(() => html`${sheetHead(say("list-title", { step: here.step.name }))}${cautions(here.step)}
    ${points.map((point, index) => tick(point, ticked.has(index), () => { toggle(ticked, index); redraw(); }))}
    <button type="button" class="go" ?disabled=${ticked.size < points.length} @click=${done}>
      ${ticked.size < points.length ? say("list-left", { left: points.length - ticked.size }) : say(ready, { station: here.station?.name ?? "" })}</button>`);
}

export const toggle = (set, value) => (set.has(value) ? set.delete(value) : set.add(value));

export const tick = (words, on, change) =>
  html`<label class="tick"><input type="checkbox" .checked=${on} @change=${change}><span>${words}</span></label>`;

const said = new Map();

export const minutesFor = ({ load, step }) => said.get(`${load.run}/${load.id}`) ?? Math.max(1, Math.round(step?.minutes?.machine ?? 10));
const sayMinutes = ({ load }, minutes) => said.set(`${load.run}/${load.id}`, minutes);

export const minutesStepper = (here) =>
  stepper(say("ui-runs-about"), minutesFor(here), { min: 1, max: 2000, unit: say("ui-min"), set: (minutes) => sayMinutes(here, minutes) });

/** The big button of a loaded machine; the full start list comes before it where it is wanted. */
export function runButton(here) {
  const { load, step, station } = here;
  const run = () => startMachine(load, minutesFor(here));
  const action = wantsList(here) ? () => openStartList(here, (before) => startMachine(load, minutesFor(here), {}, before), "list-run") : run;
  return html`${minutesStepper(here)}
    <button type="button" class="go" @click=${action}>${wantsList(here) ? say("go-list-then-run", { points: step.checklist.length }) : say("go-running", { station: station?.name ?? "" })}</button>`;
}
