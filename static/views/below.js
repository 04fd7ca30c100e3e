// What belongs to the first thing on Now and is further down: first piece, other endings, late entries, list and setup.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { firstPiece, handsOf, listOf, loadAt, openMoves } from "./doing.js";
import { careText } from "./cautions.js";
import { openCount, openFirstPiece, openStartList } from "../door/later.js";
import { minutesFor } from "./operation.js";
import { about, finishLoad, loadOf, press, startLoad, startMachine } from "../door/press.js";
import { pastTime } from "./sheet.js";
import { say, stepOf } from "../door/words.js";

export function below(scene) {
  const { state, me } = scene;
  if (state.people?.[me]?.away) return nothing;
  const hands = handsOf(state, me);
  if (hands?.job) return nothing;
  if (hands) return html`${firstPieceNotice(hands)}${hands.load.state === "loading" ? lateRunning(hands) : otherwise(hands)}${details(hands)}`;
  const move = openMoves(state, me)[0];
  const step = move && stepOf(state.runs?.[move.run], move.step, move.trays?.[0]);
  if (!step) return nothing;
  const load = loadAt(state, [move.run, move.load]) ?? loadOf(move);
  return html`${["start", "wipe"].includes(move.code) ? lateStart(loadOf(move)) : nothing}${details({ run: state.runs[move.run], load, step, station: state.stations?.[move.station] })}`;
}

const otherwise = ({ run, load }) => html`<details><summary>${say("late-finish")}</summary><div class="pair">
    <button type="button" @click=${() => finishLoad(run, load)}>${say("go-only-done")}</button>
    <button type="button" @click=${() => openCount(load)}>${say("go-count")}</button></div>${lateDone(run, load)}</details>`;

/** The start list, setup sheet and first-piece check of an operation, folded. */
export function details(here) {
  const { step } = here;
  if (!step) return nothing;
  const points = listOf(here);
  if (!points.length && !step.setup_sheet?.length && !step.checks?.length) return nothing;
  return html`<details><summary>${say("details-title", { step: step.name })}</summary>
    ${points.length ? html`<h2>${say("details-list")}</h2><ul>${points.map(({ key, text }) => html`<li>${key ? careText(key) : text}</li>`)}</ul>
      ${here.load?.state ? html`<button type="button" class="full" @click=${() => openStartList(here)}>${say("details-tick")}</button>` : nothing}` : nothing}
    ${step.setup_sheet?.length ? html`<h2>${say("details-sheet")}</h2>
      <dl class="pairs">${step.setup_sheet.map(([label, text]) => html`<div><dt>${label}</dt><dd>${text}</dd></div>`)}</dl>` : nothing}
    ${step.checks?.length ? html`<h2>${say("details-first-piece")}</h2><ul>${step.checks.map((check) => html`<li>${check.text}</li>`)}</ul>
      <p>${say(`first-piece-${firstPiece(here) || "open"}`)}</p>
      <button type="button" class="full" @click=${() => openFirstPiece(here)}>${say("details-check")}</button>` : nothing}
  </details>`;
}

/** A first piece that is still to be checked. */
function firstPieceNotice(here) {
  const { run, step } = here;
  if (!step?.checks?.length || run.stopped?.[step.key] || firstPiece(here)) return nothing;
  return html`<div class="ask-row"><span>${say("first-piece-open")}</span><button type="button" @click=${() => openFirstPiece(here)}>${say("details-check")}</button></div>`;
}

/** A first piece failed: the operation stops until somebody decides. */
export function stoppedNotice({ run, load, step }) {
  const decide = (what) => press(say(`did-decided-${what.replace(" ", "-")}`, { step: step.name }), [{ kind: "first piece decided", ...about(load), body: { what } }]);
  return html`<div class="panel look" role="alert"><p><b>${say("first-piece-stopped", { step: step.name, run: run.name })}</b></p>
    <div class="pair"><button type="button" @click=${() => decide("check again")}>${say("decide-again")}</button>
    <button type="button" @click=${() => decide("go on")}>${say("decide-go-on")}</button></div></div>`;
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
