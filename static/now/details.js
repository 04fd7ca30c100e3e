// What an operation asks: cautions where the work is, start list, setup sheet, first piece.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { firstPiece } from "./doing.js";
import { about } from "./presses.js";
import { press } from "./press.js";
import { openFirstPiece } from "./firstpiece.js";
import { openStartList } from "./startlist.js";
import { say } from "./words.js";

/** In type as large as the step, before it. */
export const cautions = (step) =>
  step?.cautions?.length ? html`<p class="cautions">${step.cautions.map(sentence).join(" ")}</p>` : nothing;

const sentence = (text) => (/[.!?]$/.test(text) ? text : `${text}.`);

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
