// 'Try the sound', with when it was last heard: a phone that is muted does not say so by itself.

import { html } from "../vendor/lit-html-3.3.3.js";
import { soundOn, tryTone, turnOnSound } from "./alarm.js";
import { closeSheet, openSheet, redraw, sheetHead } from "../views/sheet.js";
import { say } from "../door/words.js";

const HEARD = "runboard.heard";

/** The row that tries it; before the first press it turns sound on. */
export function hearing() {
  const heard = localStorage.getItem(HEARD);
  return html`<div class="ask-row"><span>${heard ? say("hearing-last", { at: heard }) : say("hearing-never")}</span>
    <button type="button" @click=${trySound}>${say("hearing-try")}</button></div>`;
}

function trySound() {
  if (soundOn()) tryTone();
  else turnOnSound(tryTone);
  openSheet(() => html`${sheetHead(say("hearing-title"))}
    <p>${say("hearing-if-not")}</p>
    <button type="button" class="go" @click=${heardIt}>${say("hearing-yes")}</button>
    <button type="button" class="full spaced" @click=${() => tryTone()}>${say("hearing-again")}</button>`);
}

function heardIt() {
  localStorage.setItem(HEARD, new Date().toISOString());
  closeSheet();
  redraw();
}
