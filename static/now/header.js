// The head of Now: the run, what is due, and who you are.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis } from "./clock.js";
import { become, serverReached } from "./shop.js";
import { outboxTrouble } from "./outbox.js";
import { say } from "./words.js";

export function header({ state, me, run }) {
  return html`
    <header class="run">
      <div class="run-words"><b>${run?.name ?? state.shop?.name ?? ""}</b>${run ? dueWords(run) : nothing}</div>
      ${youAre(state, me)}
    </header>
    ${serverReached() ? nothing : html`<p class="notice" role="status">${say("ui-no-server")}</p>`}
    ${outboxTrouble() === "pair" ? html`<p class="notice" role="alert">${say("ui-pair")}</p>` : nothing}`;
}

function dueWords(run) {
  const open = (run.orders ?? []).filter((order) => (order.good ?? 0) < order.pieces);
  const next = open.filter((order) => order.due).sort((one, other) => millis(one.due) - millis(other.due))[0];
  const parts = [say("head-good", { good: run.good ?? 0, wanted: run.wanted ?? 0 })];
  if (next) parts.push(say("head-due", { good: next.good ?? 0, pieces: next.pieces, due: next.due }));
  if (run.ready_at) parts.push(say("head-all-by", { by: run.ready_at }));
  return html`<span>${parts.join(" · ")}</span>`;
}

function youAre(state, me) {
  const people = Object.entries(state.people ?? {}).filter(([, one]) => !one.removed);
  if (people.length < 2) return nothing;
  if (people.length > 3) {
    return html`<label class="you"><span class="unseen">${say("ui-you-are")}</span>
      <select @change=${(event) => become(event.target.value)}>${people.map(([key, one]) => html`<option value=${key} ?selected=${key === me}>${one.name}</option>`)}</select></label>`;
  }
  return html`<div class="you" role="group" aria-label=${say("ui-you-are")}>
    ${people.map(([key, one]) => html`<button type="button" aria-pressed=${String(key === me)} @click=${() => become(key)}>${one.name}</button>`)}
  </div>`;
}
