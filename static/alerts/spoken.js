// Said aloud, for whoever has their hands full: what Now says next, and each alarm. Off until wanted on this phone; each once,
// and lower while hands are at a cutter.

import { html } from "../vendor/lit-html-3.3.3.js";
import { recall, remember } from "../door/remembered.js";
import { redraw } from "../door/screen.js";
import { hush, speak, voiceFor } from "../door/speech.js";
import { say } from "../door/words.js";
import { isSoft } from "./alarm.js";
import { titleOf } from "./alerts.js";

const WANTED = "runboard.spoken";
const LOW = 0.3;
const CALM_MS = 8000;
let last = { text: "", at: 0 };
let told = null;

export const isSpoken = () => recall(WANTED) === "on";

/** The switch on the phone's own Now. */
export function spokenRow() {
  const on = isSpoken();
  const turn = () => {
    remember(WANTED, on ? "off" : "on");
    if (on) hush();
    else speak(say("spoken-hello"));
    redraw();
  };
  return html`<div class="ask-row"><span>${say(voiceFor("en") ? "spoken-what" : "spoken-no-voice")}</span>
    ${voiceFor("en") || on ? html`<button type="button" aria-pressed=${String(on)} @click=${turn}>${say(on ? "spoken-off" : "spoken-on")}</button>` : ""}</div>`;
}

/** Called each second with the alerts of this page and what Now says: new alarms first, then what is new to do. */
export function speakOf({ state, me }, due, doing) {
  const ids = due.map((alert) => `${alert.id}|${alert.stage ?? ""}`);
  const fresh = told ? due.filter((alert, index) => !told.has(ids[index])) : [];
  told = new Set(ids);
  if (!isSpoken()) return;
  const volume = isSoft(state, me) ? LOW : 1;
  for (const alert of fresh) speak(titleOf(state, alert), volume);
  speakNext(doing, volume);
}

// What one has just begun is said once; what changes back and forth is not said each time.
function speakNext(doing, volume) {
  if (!doing || doing === last.text || Date.now() - last.at < CALM_MS) return;
  if (last.text) speak(doing, volume);
  last = { text: doing, at: last.text ? Date.now() : 0 };
}
