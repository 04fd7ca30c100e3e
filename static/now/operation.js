// What an operation asks: cautions, start list, setup sheet, first piece; and the presses that start a machine or come late.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { firstPiece, wantsList } from "./doing.js";
import { openFirstPiece } from "./later.js";
import { about, finishLoad, press, startLoad, startMachine } from "./press.js";
import { closeSheet, openSheet, pastTime, redraw, sheetHead, stepper } from "./sheet.js";
import { say } from "./words.js";

/** In type as large as the step, before it. */
export const cautions = (step) =>
  step?.cautions?.length ? html`<p class="cautions">${step.cautions.map(sentence).join(" ")}</p>` : nothing;

const sentence = (text) => text[0].toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

export function details(here) {
  const { step } = here;
  if (!step) return nothing;
  const has = step.checklist?.length || step.setup_sheet?.length || step.checks?.length;
  if (!has) return nothing;
  return html`<details><summary>${say("details-title", { step: step.name })}</summary>
    ${step.checklist?.length ? html`<h2>${say("details-list")}</h2><ul>${step.checklist.map((point) => html`<li>${point}</li>`)}</ul>
      ${here.load?.state ? html`<button type="button" class="full" @click=${() => openStartList(here)}>${say("details-tick")}</button>` : nothing}` : nothing}
    ${step.setup_sheet?.length ? html`<h2>${say("details-sheet")}</h2>
      <dl class="pairs">${step.setup_sheet.map(([label, text]) => html`<div><dt>${label}</dt><dd>${text}</dd></div>`)}</dl>` : nothing}
    ${step.checks?.length ? html`<h2>${say("details-first-piece")}</h2><ul>${step.checks.map((check) => html`<li>${check.text}</li>`)}</ul>
      <p>${say(`first-piece-${firstPiece(here) || "open"}`)}</p>
      <button type="button" class="full" @click=${() => openFirstPiece(here)}>${say("details-check")}</button>` : nothing}
  </details>`;
}

/** A first piece that is still to be checked, or one that failed: then the operation stops until somebody decides. */
export function firstPieceNotice(here) {
  const { run, step } = here;
  if (!step) return nothing;
  if (run.stopped?.[step.key]) return stoppedNotice(here);
  if (!step.checks?.length || firstPiece(here)) return nothing;
  return html`<div class="ask-row"><span>${say("first-piece-open")}</span><button type="button" @click=${() => openFirstPiece(here)}>${say("details-check")}</button></div>`;
}

export function stoppedNotice({ run, load, step }) {
  const decide = (what) => press(say(`did-decided-${what.replace(" ", "-")}`, { step: step.name }), [{ kind: "first piece decided", ...about(load), body: { what } }]);
  return html`<div class="panel look" role="alert"><p><b>${say("first-piece-stopped", { step: step.name, run: run.name })}</b></p>
    <div class="pair"><button type="button" @click=${() => decide("check again")}>${say("decide-again")}</button>
    <button type="button" @click=${() => decide("go on")}>${say("decide-go-on")}</button></div></div>`;
}

/** Opens the full list. `then(drafts)` is called with the event that notes it; without it the list is noted alone. */
export function openStartList(here, then = (drafts) => press(say("did-list", { station: here.station?.name ?? "" }), drafts)) {
  const ticked = new Set();
  const points = here.step.checklist;
  const done = () => {
    closeSheet();
    then([{ kind: "checklist ticked", ...about(here.load), body: { list: "full", items: points } }]);
  };
  openSheet(() => html`${sheetHead(say("list-title", { step: here.step.name }))}${cautions(here.step)}
    ${points.map((point, index) => tick(point, ticked.has(index), () => { toggle(ticked, index); redraw(); }))}
    <button type="button" class="go" ?disabled=${ticked.size < points.length} @click=${done}>
      ${ticked.size < points.length ? say("list-left", { left: points.length - ticked.size }) : say("list-done", { station: here.station?.name ?? "" })}</button>`);
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
  const action = wantsList(here) ? () => openStartList(here, (before) => startMachine(load, minutesFor(here), {}, before)) : run;
  return html`${minutesStepper(here)}
    <button type="button" class="go" @click=${action}>${wantsList(here) ? say("go-list-then-run", { points: step.checklist.length }) : say("go-running", { station: station?.name ?? "" })}</button>`;
}

const AGO = [5, 15, 40];

const fold = (title, content) => html`<details class="late-entry"><summary>${title}</summary>${content}</details>`;

const ago = (id, use) => html`<div class="choices">${AGO.map((minutes) =>
  html`<button type="button" @click=${() => use({ minutesAgo: minutes })}>${say(id, { minutes })}</button>`)}</div>`;

const allGood = (load) => Object.fromEntries(Object.entries(load.pieces).map(([tray, good]) => [tray, { good }]));

export const lateStart = (load) => fold(say("late-start"), html`
  ${ago("late-started-ago", (extra) => startLoad(load, extra))}
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(undefined, load, null, { at, counts: allGood(load) }))}`);

export const lateRunning = (here) => fold(say("late-running"), ago("late-running-ago", (extra) => startMachine(here.load, minutesFor(here), extra)));

/** The late endings of a load at hand. */
export const lateDone = (run, load) => html`
  <p class="ask">${say("late-finished")}</p><div class="choices">${AGO.map((minutes) => html`<button type="button" @click=${() => finishLoad(run, load, null, { minutesAgo: minutes })}>${say("late-done-ago", { minutes })}</button>`)}</div>
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(run, load, null, { at }))}`;
