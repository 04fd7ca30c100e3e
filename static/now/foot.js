// The foot, in reach of the thumb: what I pressed last, whether it has arrived, and 'Undo'; refused presses above it.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { dismiss, pressState, refused, waiting } from "./outbox.js";
import { forget, lastPress, undo } from "./press.js";
import { say, sayRefused } from "./words.js";

/** Presses that were refused, each with its sentence, until they are read. */
export function refusals() {
  const presses = new Map(refused().map((entry) => [entry.press, entry]));
  if (!presses.size) return nothing;
  return html`<div role="alert">${[...presses.values()].map((entry) => html`<section class="panel look">
    <p><b>${say("press-refused", { what: entry.label })}</b></p><p>${sayRefused(entry.refused)}</p>
    <button type="button" class="full" @click=${() => { forget(entry.press); void dismiss(entry.press); }}>${say("press-read")}</button></section>`)}</div>`;
}

export function foot() {
  const last = lastPress();
  const unsent = waiting().length;
  if (!last) return unsent ? html`<footer class="last"><span>${say("press-unsent", { count: unsent })}</span></footer>` : nothing;
  const label = last.label || say("press-elsewhere");
  const state = last.label ? pressState(last.id) : "sent";
  return html`<footer class="last"><span><b>${label}</b><span class="soft">${say(`press-${state.replace(" ", "-")}`)}${unsent > 1 ? ` · ${say("press-unsent", { count: unsent })}` : ""}</span></span>
    ${state === "refused" ? nothing : html`<button type="button" @click=${() => undo(last, say("did-undo", { what: label }))} aria-label=${say("ui-undo-what", { what: label })}>${say("ui-undo")}</button>`}</footer>`;
}
