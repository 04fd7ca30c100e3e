// Controls that several parts share: a stepper, a choice of one, positions, a moment.

import { html, live, nothing } from "../vendor/lit-html-3.3.3.js";
import { atLocal, now } from "./clock.js";
import { redraw } from "./drawing.js";
import { say } from "./words.js";

/** '− 5 +' with a label; `set(value)` is called within min and max. */
export function stepper(label, value, { min = 0, max = 999, by = 1, unit = "", set }) {
  const put = (wanted) => { set(Math.min(max, Math.max(min, wanted))); redraw(); };
  const typed = (event) => { const number = Number(event.target.value); if (Number.isFinite(number)) put(number); };
  return html`<div class="stepper" role="group" aria-label=${label}>
    <span class="stepper-label">${label}</span>
    <button type="button" aria-label=${say("ui-less", { what: label })} ?disabled=${value <= min} @click=${() => put(value - by)}>−</button>
    <input inputmode="numeric" aria-label=${label} .value=${live(String(value))} @change=${typed}>
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

export const textField = (label, value, set) => html`
  <div class="field"><label>${label}<input .value=${live(value)} @input=${(event) => { set(event.target.value); redraw(); }}></label></div>`;

/** Until when: some easy moments, or a day and time of one's own. Gives ISO text or ''. */
export function untilWhen(label, value, set) {
  const easy = [["", say("ui-unknown")], ...[0, 1, 2, 7].map((days) => [new Date(atLocal("18:00", now(), days)).toISOString(), say(`until-day-${days}`)])];
  return oneOf(label, easy.filter(([iso]) => !iso || Date.parse(iso) > now()), value, set);
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
