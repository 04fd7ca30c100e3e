// What belongs to an operation and is further down: first piece, other endings, late entries, list and setup.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { today } from "../door/clock.js";
import { open } from "../door/later.js";
import { about, finishLoad, loadOf, press, startLoad, startMachine } from "../door/press.js";
import { say, stepOf } from "../door/words.js";
import { pointText } from "./cautions.js";
import { pastTime } from "./controls.js";
import { handsOf, listOf, loadAt } from "./doing.js";
import { openMoves } from "./moves.js";
import { minutesFor } from "./operation.js";
import { button } from "./sheet.js";

export function below(scene) {
  const { state, me } = scene;
  if (state.people?.[me]?.away) return nothing;
  const hands = handsOf(state, me);
  if (hands?.job) return nothing;
  if (hands) return html`${hands.load.state === "loading" ? lateRunning(hands) : otherwise(hands)}${details(hands)}`;
  const move = openMoves(state, me)[0];
  const step = move && stepOf(state.runs?.[move.run], move.step, move.trays?.[0]);
  if (!step) return nothing;
  const load = loadAt(state, [move.run, move.load]) ?? loadOf(move);
  return html`${["start", "wipe"].includes(move.code) ? lateStart(loadOf(move)) : nothing}${details({ run: state.runs[move.run], load, step, station: state.stations?.[move.station] })}`;
}

const otherwise = ({ run, load }) => html`<details><summary>${say("late-finish")}</summary><div class="pair">
    ${button(say("go-only-done"), () => finishLoad(run, load))}${button(say("go-count"), () => open("count", load))}</div>${lateDone(run, load)}</details>`;

/** The start list, setup sheet and first-piece check of an operation, folded. */
export function details(here) {
  const { step } = here;
  if (!step || !isTold(here)) return nothing;
  const tickAll = here.load?.state && button(say("details-tick"), () => open("start list", here), "full");
  const check = step.checks?.length && html`<p>${say(`first-piece-${firstPiece(here) || "open"}`)}</p>${button(say("details-check"), () => open("first piece", here), "full")}`;
  return html`<details><summary>${say("details-title", { step: step.name })}</summary>${told(here, tickAll, check)}</details>`;
}

/** Whether an operation has a list, a setup sheet or checks. */
export const isTold = ({ step, station }) => Boolean(listOf({ step, station }).length || step.setup_sheet?.length || step.checks?.length);

/** The list, setup sheet and checks of an operation, each with what can be done about it. */
export const told = ({ step, station }, ticks = nothing, check = nothing) => html`
  ${listed("details-list", listOf({ step, station }).map(pointText), ticks)}
  ${step.setup_sheet?.length ? html`<h3>${say("details-sheet")}</h3>
    <dl class="pairs">${step.setup_sheet.map(([label, text]) => html`<div><dt>${label}</dt><dd>${text}</dd></div>`)}</dl>` : nothing}
  ${listed("details-first-piece", step.checks?.map(({ text }) => text), check)}`;

const listed = (title, points, after) =>
  (points?.length ? html`<h3>${say(title)}</h3><ul>${points.map((point) => html`<li>${point}</li>`)}</ul>${after || nothing}` : nothing);

/** How the first piece of a step stands: 'pass', 'fail', or '' while a check is still open. */
function firstPiece({ run, load, step, station }) {
  const scopes = { run: "run", load: load?.id ?? "", setup: `${station?.setups ?? 0}|${today()}` };
  const results = (step.checks ?? []).map((check) => run.first_pieces?.[`${step.key}|${scopes[check.per ?? "setup"]}|${check.key}`] ?? "");
  if (results.includes("fail")) return "fail";
  return results.includes("") ? "" : "pass";
}

/** A first piece that is still to be checked. */
export function firstPieceNotice(here) {
  const { run, step } = here;
  if (!step?.checks?.length || run.stopped?.[step.key] || firstPiece(here)) return nothing;
  return html`<div class="ask-row"><span>${say("first-piece-open")}</span>${button(say("details-check"), () => open("first piece", here))}</div>`;
}

/** A first piece failed: the operation stops until somebody decides. */
export function stoppedNotice({ run, load, step }) {
  const decide = (what) => () => press(say(`did-decided-${what.replace(" ", "-")}`, { step: step.name }), [{ kind: "first piece decided", ...about(load), body: { what } }]);
  return html`<div class="panel look" role="alert"><p><b>${say("first-piece-stopped", { step: step.name, run: run.name })}</b></p>
    <div class="pair">${button(say("decide-again"), decide("check again"))}${button(say("decide-go-on"), decide("go on"))}</div></div>`;
}

const AGO = [5, 15, 40];

const fold = (title, content) => html`<details class="late-entry"><summary>${title}</summary>${content}</details>`;

const ago = (id, use) => html`<div class="choices">${AGO.map((minutes) => button(say(id, { minutes }), () => use({ minutesAgo: minutes })))}</div>`;

const allGood = (load) => Object.fromEntries(Object.entries(load.pieces).map(([tray, good]) => [tray, { good }]));

const lateStart = (load) => fold(say("late-start"), html`
  ${ago("late-started-ago", (extra) => startLoad(load, extra))}
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(undefined, load, null, { at, counts: allGood(load) }))}`);

export const lateRunning = (here) => fold(say("late-running"), ago("late-running-ago", (extra) => startMachine(here.load, minutesFor(here), extra)));

const lateDone = (run, load) => html`<p class="ask">${say("late-finished")}</p>${ago("late-done-ago", (extra) => finishLoad(run, load, null, extra))}
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(run, load, null, { at }))}`;
