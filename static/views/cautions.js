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

const rows = (care) =>
  (care.length ? html`<ul class="cautions">${care.map((caution) => html`<li>${signs(caution.signs)}<span>${caution.key ? careText(caution.key) : sentence(caution.text)}</span></li>`)}</ul>` : nothing);

export const cautions = (step) => rows(step?.care ?? []);

// What is read at any time while a machine runs.
const OPEN = ["stay-and-watch", "fire"];
const nameOf = ({ key, text }) => key ?? text;

/** The cautions of several steps that are under way, each once, as [readable, folded to their signs]. What `read`, a step
 *  above, says already is left out. */
export function underWay(steps, read) {
  const above = new Set(read?.care?.map(nameOf));
  const all = [...new Map(steps.flatMap((step) => step?.care ?? []).map((caution) => [nameOf(caution), caution])).values()].filter((caution) => !above.has(nameOf(caution)));
  const folded = all.filter(({ key }) => !OPEN.includes(key));
  const numbers = [...new Set(folded.flatMap((caution) => caution.signs ?? []))];
  return [rows(all.filter(({ key }) => OPEN.includes(key))), folded.length ? html`<details class="care"><summary>${signs(numbers)}<span>${sayLater("en.sheets", "cautions-more", { count: folded.length })}</span></summary>${rows(folded)}</details>` : nothing];
}

const sentence = (text) => text[0].toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");
