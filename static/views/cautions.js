// The cautions beside a step, in type as large as the step, each with its ISO 7010 signs. Their texts and signs come after
// the first drawing: they are a part of the catalogue for themselves.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { say, sayLater } from "../door/words.js";

/** What the catalogue of cautions says under a key; '' while it is on its way. */
export const careText = (key, facts) => sayLater("en.care", `care-${key}`, facts);

/** A point of a list: one of the catalogue's, or the operation's own. */
export const pointText = ({ key, text }) => (key ? careText(key) : text);

/** Signs by their registered numbers, as pictures. */
export const signs = (numbers = []) =>
  numbers.map((number) => html`<img class="sign" src=${`/static/signs/${number}.svg`} alt=${say("sign-alt", { number })} width="44" height="44">`);

export const cautions = (step) =>
  step?.care?.length ? html`<ul class="cautions">${step.care.map((caution) => html`<li>${signs(caution.signs)}<span>${caution.key ? careText(caution.key) : sentence(caution.text)}</span></li>`)}</ul>` : nothing;

const sentence = (text) => text[0].toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");
