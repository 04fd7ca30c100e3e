// The alarm: tone, vibration and a changed title until somebody answers on any page; softly while hands are at a cutter.

import { html } from "../vendor/lit-html-3.3.3.js";
import { now } from "../door/clock.js";
import { recall, remember } from "../door/remembered.js";
import { redraw } from "../door/screen.js";
import { LOUD, maySound, resumeSound, shake, tone } from "../door/sound.js";
import { say } from "../door/words.js";
import { handsOf, isDanger, nextDue } from "../views/doing.js";
import { closeSheet, openSheet, sheetHead } from "../views/sheet.js";

export { maySound, stayAwake } from "../door/sound.js";

const LOUD_MS = 5000;
const LOUDER_MS = 2500;
const SOFT_MS = 30_000;
const CALM_MS = 15_000;
const AHEAD_MAX_MS = 3_600_000;
const SOUND = "runboard.sound";
const HEARD = "runboard.heard";
const SOFT = [[330, 0, 0.5]];
const CALM = [[523, 0, 0.25], [659, 0.3, 0.4]];
const HELLO = [[660, 0, 0.12]];
let lastTone = 0;
let ahead = { at: 0, stop: () => {} };

/** One press turns sound on; later pages resume it at the first touch. */
export function turnOnSound(then = () => tone(HELLO, 0.2)) {
  remember(SOUND, "on");
  void resumeSound().then(() => { then(); redraw(); });
}

document.addEventListener("pointerdown", () => { if (recall(SOUND) === "on") void resumeSound(); }, { passive: true });

// As an alert sounds and shakes, once.
function tryTone() {
  tone(LOUD, 0.8);
  navigator.vibrate?.([300, 120, 300]);
}

/** 'Try the sound', with when it was last heard: a phone that is muted does not say so by itself. */
export function hearing() {
  const heard = recall(HEARD);
  return html`<div class="ask-row"><span>${heard ? say("hearing-last", { at: heard }) : say("hearing-never")}</span>
    <button type="button" @click=${trySound}>${say("hearing-try")}</button></div>`;
}

// Before the first press it turns sound on.
function trySound() {
  if (maySound()) tryTone();
  else turnOnSound(tryTone);
  const heardIt = () => { remember(HEARD, new Date().toISOString()); closeSheet(); };
  openSheet(() => html`${sheetHead(say("hearing-title"))}
    <p>${say("hearing-if-not")}</p>
    <button type="button" class="go" @click=${heardIt}>${say("hearing-yes")}</button>
    <button type="button" class="full spaced" @click=${tryTone}>${say("hearing-again")}</button>`);
}

/** Hands at a cutter want no fright. */
export const isSoft = (state, me) => Boolean(handsOf(state, me)?.station?.cuts);

// A look that is asked for and a reminder of care are questions: firm, and no alarm until nobody answers.
const isCalm = (due, state) => !due.stage && !isDanger(due, state) && (due.kind === "watch check" || due.kind.startsWith("care "));

/** Called every second: rings for what is unanswered, and puts the next tone on the audio clock ahead of time. */
export function ring(scene, alerts) {
  const soft = isSoft(scene.state, scene.me);
  if (alerts.length) {
    // What nobody answered has climbed: as loud as it can be, twice as often. The server says so in the state.
    const louder = alerts.some((alert) => alert.stage || isDanger(alert, scene.state));
    const calm = alerts.every((alert) => isCalm(alert, scene.state));
    if (Date.now() - lastTone > (soft ? SOFT_MS : louder ? LOUDER_MS : calm ? CALM_MS : LOUD_MS)) sound(alerts, { soft, louder, calm });
  }
  schedule(scene, soft);
}

function sound(alerts, { soft, louder, calm }) {
  lastTone = Date.now();
  const since = now() - Math.min(...alerts.map((alert) => Date.parse(alert.due_at)));
  tone(soft ? SOFT : calm ? CALM : LOUD, soft ? 0.06 : louder ? 1 : calm ? 0.4 : Math.min(0.8, 0.25 + since / 600_000));
  if (!soft) shake(louder ? [600, 150, 600, 150, 600] : calm ? [200] : [300, 120, 300]);
}

function schedule(scene, soft) {
  const at = nextDue(scene);
  if (at === ahead.at || !maySound()) return;
  ahead.stop();
  const delay = at - now();
  const near = Number.isFinite(delay) && delay < AHEAD_MAX_MS;
  // It sounds even if the page is asleep at that moment; the ringing above follows.
  ahead = { at: near ? at : 0, stop: near ? tone(soft ? SOFT : LOUD, soft ? 0.06 : 0.4, delay / 1000) : () => {} };
}

const plainTitle = document.title;

/** The title says it in the row of tabs. */
export function title(words) {
  const wanted = words ? `▲ ${words}` : plainTitle;
  if (document.title !== wanted) document.title = wanted;
}
