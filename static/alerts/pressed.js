// A button at a station was pressed: every open page says with a tone, and for a while in words, what it did.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "../door/clock.js";
import { tone } from "../door/sound.js";
import { personName, say, sayCode, slug, stationName } from "../door/words.js";

const SHOWN_MS = 20_000;
const NEW_MS = 10_000;
// Up: done; down: taken back; low: nothing was done.
const TONES = {
  done: [[660, 0, 0.12], [880, 0.16, 0.2]], started: [[660, 0, 0.12], [880, 0.16, 0.2]],
  "taken back": [[880, 0, 0.12], [660, 0.16, 0.2]], nothing: [[220, 0, 0.35]],
};
let heard = 0;

/** Called each second: a press that is new here sounds once. */
export function hearButton({ state }) {
  const at = millis(state.pressed?.at);
  if (!at || at <= heard) return;
  heard = at;
  if (now() - at < NEW_MS) tone(TONES[state.pressed.did] ?? TONES.nothing, 0.4);
}

/** What the button did, for as long as somebody looks up. */
export function pressedLine({ state }) {
  const pressed = state.pressed;
  if (!pressed || now() - millis(pressed.at) > SHOWN_MS) return nothing;
  const facts = { station: stationName(state, pressed.station), person: pressed.person ? personName(state, pressed.person) : "" };
  const words = pressed.code ? sayCode("refused", pressed.code, { ...facts, ...pressed.facts }) : say(`button-${slug(pressed.did)}`, facts);
  return html`<p class="notice" role="status">${words}</p>`;
}
