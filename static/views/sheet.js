// The sheet over a screen, its buttons, and the stepper.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { redraw } from "../door/screen.js";
import { say } from "../door/words.js";

let body = null;
// Of which sheet the dialog stands at its place: another one opens at its top.
let placed = null;

/** Opens a sheet; `content(scene)` gives its template and is asked again at every drawing. */
export function openSheet(content) {
  body = content;
  redraw();
}

export function closeSheet() {
  body = null;
  redraw();
}

export const sheet = (scene) => html`
  <dialog class="sheet" aria-labelledby="sheet-title" @close=${closeSheet} @click=${byBackdrop}>
    <div class="inside">${body ? body(scene) : nothing}</div>
  </dialog>`;

const byBackdrop = (event) => event.target === event.currentTarget && closeSheet();

/** Opens or closes the dialog itself after a drawing. */
export function syncSheet(root) {
  const dialog = root.querySelector("dialog.sheet");
  if (body && !dialog.open) dialog.showModal();
  if (!body && dialog.open) dialog.close();
  if (body !== placed) dialog.scrollTop = 0;
  placed = body;
}

export const sheetHead = (title) => html`
  <header class="sheet-head"><h2 id="sheet-title">${title}</h2><button type="button" @click=${closeSheet}>${say("ui-close")}</button></header>`;

/** What a press inside a sheet does: it closes the sheet, then acts. */
export const closing = (action) => () => { closeSheet(); action(); };

export const button = (words, action, kind = "") => html`<button type="button" class=${kind} @click=${action}>${words}</button>`;

/** The big button under a sheet: closes it and acts; grey while something is still to be said. */
export const goButton = (words, action, barred = false) =>
  html`<button type="button" class="go" ?disabled=${barred} @click=${closing(action)}>${words}</button>`;

/** '− 5 +' with a label; `set(value)` is called within min and max. A drawing leaves half-typed digits alone. */
export function stepper(label, value, { min = 0, max = 999, by = 1, unit = "", set }) {
  const fit = (wanted) => Math.min(max, Math.max(min, wanted));
  const put = (wanted) => { set(fit(wanted)); redraw(); };
  const typed = ({ target }) => {
    const number = target.value.trim() ? Number(target.value) : NaN;
    const wanted = Number.isFinite(number) ? fit(number) : value;
    target.value = String(wanted);
    put(wanted);
  };
  return html`<div class="stepper" role="group" aria-label=${label}>
    <span class="stepper-label">${label}</span>
    <button type="button" aria-label=${say("ui-less", { what: label })} ?disabled=${value <= min} @click=${() => put(value - by)}>−</button>
    <input inputmode="numeric" aria-label=${label} .value=${String(value)} @change=${typed}>
    <button type="button" aria-label=${say("ui-more", { what: label })} ?disabled=${value >= max} @click=${() => put(value + by)}>+</button>
    ${unit ? html`<span class="unit">${unit}</span>` : nothing}
  </div>`;
}
