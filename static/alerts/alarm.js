// The alarm: tone, vibration and a changed title until somebody answers on any page; softly while hands are at a cutter.

import { now } from "../door/clock.js";
import { handsOf, isDanger, nextDue } from "../views/doing.js";
import { redraw } from "../views/sheet.js";

const LOUD_MS = 5000;
const LOUDER_MS = 2500;
const SOFT_MS = 30_000;
const CALM_MS = 15_000;
const AHEAD_MAX_MS = 3_600_000;
let audio = null;
let lastTone = 0;
let ahead = { at: 0, stop: () => {} };

export const soundOn = () => audio?.state === "running";

/** One press turns sound on; later pages resume it at the first touch. */
export function turnOnSound(then = () => tone([[660, 0, 0.12]], 0.2)) {
  localStorage.setItem("runboard.sound", "on");
  audio ??= new AudioContext();
  void audio.resume().then(() => { then(); redraw(); });
}

/** As an alert sounds and shakes, once. */
export function tryTone() {
  tone(LOUD, 0.8);
  navigator.vibrate?.([300, 120, 300]);
}

export function resumeSound() {
  if (localStorage.getItem("runboard.sound") === "on" && !soundOn()) {
    audio ??= new AudioContext();
    void audio.resume();
  }
}

/** Schedules [frequency, after, seconds] notes; gives a function that stops them. */
function tone(notes, volume, delay = 0) {
  if (!soundOn()) return () => {};
  const playing = notes.map(([frequency, after, seconds]) => {
    const start = audio.currentTime + delay + after;
    const voice = audio.createOscillator();
    const gain = audio.createGain();
    voice.frequency.value = frequency;
    gain.gain.setValueAtTime(0, start);
    gain.gain.linearRampToValueAtTime(volume, start + 0.02);
    gain.gain.setValueAtTime(volume, start + seconds - 0.03);
    gain.gain.linearRampToValueAtTime(0, start + seconds);
    voice.connect(gain).connect(audio.destination);
    voice.start(start);
    voice.stop(start + seconds);
    return voice;
  });
  return () => playing.forEach((voice) => { try { voice.stop(); } catch { /* it has ended */ } });
}

const LOUD = [[880, 0, 0.22], [660, 0.28, 0.22], [880, 0.56, 0.34]];
const SOFT = [[330, 0, 0.5]];
const CALM = [[523, 0, 0.25], [659, 0.3, 0.4]];

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
  if (!soft && navigator.userActivation?.hasBeenActive) navigator.vibrate?.(louder ? [600, 150, 600, 150, 600] : calm ? [200] : [300, 120, 300]);
}

function schedule(scene, soft) {
  const at = nextDue(scene);
  if (at === ahead.at || !soundOn()) return;
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
