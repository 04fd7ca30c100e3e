// What sheets ask with: one of several, any of several, ticks, words, moments, reasons.

import { html, live } from "../vendor/lit-html-3.3.3.js";
import { atLocal, now } from "../door/clock.js";
import { redraw } from "../door/screen.js";
import { say } from "../door/words.js";

/** One of several, as large buttons. `choices` are [value, words]. */
export const oneOf = (label, choices, value, set) => chooser(label, choices, (key) => key === value, set);

/** Any of several: those in the set `chosen`. */
export const anyOf = (label, choices, chosen) => chooser(label, choices, (key) => chosen.has(key), (key) => toggle(chosen, key));

const chooser = (label, choices, isOn, press) => html`
  <p class="ask" aria-hidden="true">${label}</p>
  <div class="choices" role="group" aria-label=${label}>
    ${choices.map(([key, words]) => html`<button type="button" aria-pressed=${String(isOn(key))} @click=${() => { press(key); redraw(); }}>${words}</button>`)}
  </div>`;

export const toggle = (set, value) => (set.has(value) ? set.delete(value) : set.add(value));

/** A line to tick; `change` is what a tick does. */
export const tick = (words, on, change, barred = false) =>
  html`<label class="tick"><input type="checkbox" .checked=${live(on)} ?disabled=${barred} @change=${() => { change(); redraw(); }}><span>${words}</span></label>`;

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

const named = (family, keys) => keys.map((key) => [key, say(`${family}-${key}`)]);

/** [code, words] of the reasons that a person can press instead of typing. */
export const scrapReasons = () => named("scrap", ["tear-out", "crack", "broke", "size", "surface", "engraving", "burnt", "knot", "other"]);
export const stopReasons = () => named("stop", ["power", "cutter", "slip", "failed", "other"]);
export const declineReasons = () => named("not-this", ["waiting", "short", "tired", "other-person", "not-ready", "noise"]);

/** 'Why?' of scrap, which is kept in words. */
export const whyScrap = (why, set) => oneOf(say("ui-why"), scrapReasons().map(([, words]) => [words, words]), why, set);
