// Drawing again, the sheet over the screen, and the controls that the parts share.

import { html, live, nothing } from "../vendor/lit-html-3.3.3.js";
import { atLocal, now } from "../door/clock.js";
import { say } from "../door/words.js";

let draw = () => {};
let queued = false;

export const setDraw = (how) => { draw = how; };

export function redraw() {
  if (queued) return;
  queued = true;
  queueMicrotask(() => { queued = false; draw(); });
}

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

/** One of several, as large buttons. `choices` are [value, words]. */
export const oneOf = (label, choices, value, set) => html`
  <p class="ask" aria-hidden="true">${label}</p>
  <div class="choices" role="group" aria-label=${label}>
    ${choices.map(([key, words]) => html`<button type="button" aria-pressed=${String(key === value)} @click=${() => { set(key); redraw(); }}>${words}</button>`)}
  </div>`;

/** `mode` is the keyboard that a phone brings up: 'text' or 'decimal'. */
export const textField = (label, value, set, mode = "text") => html`
  <div class="field"><label>${label}<input inputmode=${mode} .value=${live(value)} @input=${(event) => { set(event.target.value); redraw(); }}></label></div>`;

/** Until when: some easy moments, or a day and time of one's own. Gives ISO text or ''. */
export const untilWhen = (label, value, set) => oneOf(label, easyDays(), value, set);

/** [moment or "", words] of the days that something may be put off until. */
export function easyDays() {
  const easy = [["", say("ui-unknown")], ...[0, 1, 2, 7].map((days) => [new Date(atLocal("18:00", now(), days)).toISOString(), say(`until-day-${days}`)])];
  return easy.filter(([iso]) => !iso || Date.parse(iso) > now());
}

/** 'done at [time]': calls `use(ms)` with the last such moment in the past. */
export function pastTime(label, verb, use) {
  const take = (event) => {
    event.preventDefault();
    const hhmm = new FormData(event.target).get("time");
    if (!hhmm) return;
    const today = atLocal(hhmm);
    use(today > now() ? atLocal(hhmm, now(), -1) : today);
  };
  return html`<form class="inline" @submit=${take}><label>${label}<input type="time" name="time" required></label><button>${verb}</button></form>`;
}
