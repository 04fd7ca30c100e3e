// The drawn positions of a jig or board: pressed through untouched, good, half, spoilt; or picked one by one.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { redraw } from "../door/screen.js";
import { say } from "../door/words.js";
import { anyOf } from "./controls.js";

const ORDER = ["untouched", "good", "half", "spoilt"];
const MARK = { untouched: "", good: "✓", half: "◐", spoilt: "✗" };

/** A grid to press through; `marks` maps a position to its state. */
export const throughStates = (count, marks) => html`<div class="positions" role="group" aria-label=${say("ui-positions")}>
  ${Array.from({ length: count }, (_, index) => index + 1).map((place) => {
    const state = marks.get(place) ?? "untouched";
    const turn = () => { marks.set(place, ORDER[(ORDER.indexOf(state) + 1) % ORDER.length]); redraw(); };
    return html`<button type="button" class=${state} aria-label=${say("position-label", { place, state: say(`position-${state}`) })} @click=${turn}>
      ${place}<span>${MARK[state]} ${say(`position-${state}`)}</span></button>`;
  })}</div>`;

export const placesIn = (marks, state, count) =>
  Array.from({ length: count }, (_, index) => index + 1).filter((place) => (marks.get(place) ?? "untouched") === state);

/** Which text at which position of a tray; where an order line has no text, the line's name. */
export function textsOf(tray) {
  const places = Object.entries(tray?.places ?? {});
  return places.length ? html`<ul class="places" aria-label=${say("trays-texts")}>${places.map(([place, [line, text]]) =>
    html`<li><small>${say("position-of", { place })}</small> <b>${text || line}</b></li>`)}</ul>` : nothing;
}

/** The same for each tray of a load. */
export function textsOn(run, load) {
  const trays = Object.keys(load.pieces);
  return trays.map((tray) => html`${trays.length > 1 ? html`<p>${say("ui-tray", { tray })}</p>` : nothing}${textsOf(run.trays[tray])}`);
}

/** The personal pieces of a tray by their text; picked ones are in `picked`. */
export function positionsOf(tray, picked) {
  const places = Object.entries(tray?.places ?? {});
  const words = ([place, [line, text]]) => html`<small>${say("position-of", { place })}</small> ${text || line}`;
  return places.length ? anyOf(say("positions-which"), places.map((place) => [Number(place[0]), words(place)]), picked) : nothing;
}
