// Small parts that several places of the helper's page draw alike.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";

/** ISO signs beside their words, which say the same: so they are not read out. */
export const signs = (numbers = []) =>
  numbers.length ? html`<span class="signs">${numbers.map((number) => html`<img src="/static/signs/${number}.svg" alt="" width="56" height="56">`)}</span>` : nothing;

/** A text of the shop's own, in the language that it is written in where nobody translated it. */
export const own = ({ text, lang }) => html`<span lang=${lang ?? nothing}>${text}</span>`;

export const button = (words, action, kind = "") => html`<button type="button" class=${kind} @click=${action}>${words}</button>`;

/** A sentence of the catalogue with the numbers that only this page knows. */
export const fill = (text, facts) => text.replace(/\{(\w+)\}/g, (_, name) => facts[name] ?? "");

/** − number + */
export const stepper = (words, label, value, { min = 0, max, unit = "", set }) => html`<div class="stepper" role="group" aria-label=${label}>
  <button type="button" aria-label="${words.less}: ${label}" ?disabled=${value <= min} @click=${() => set(value - 1)}>−</button>
  <output>${value}${unit ? ` ${unit}` : ""}<small>${label}</small></output>
  <button type="button" aria-label="${words.more}: ${label}" ?disabled=${value >= max} @click=${() => set(value + 1)}>+</button></div>`;

// A sentence around a name that nobody translated.
const around = (text, name) => name && text.includes(name.text) ? html`<span>${text.split(name.text)[0]}${own(name)}${text.split(name.text).slice(1).join(name.text)}</span>` : html`<span>${text}</span>`;

export const notice = ({ kind, text, own: name, signs: numbers }) =>
  html`<div class="note ${kind}" role=${kind === "danger" ? "alert" : "note"}>${numbers ? signs(numbers) : nothing}${around(text, name)}</div>`;
