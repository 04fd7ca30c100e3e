// The sheet: one dialog over the screen. What it shows is a function of the scene, so it stays up to date.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { redraw } from "./drawing.js";
import { say } from "./words.js";

let body = null;

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
}

export const sheetHead = (title) => html`
  <header class="sheet-head"><h2 id="sheet-title">${title}</h2><button type="button" @click=${closeSheet}>${say("ui-close")}</button></header>`;

/** A press inside a sheet: does it and closes the sheet. */
export const closing = (action) => () => { closeSheet(); action(); };
