// Late entries: 'started 15 min ago', 'done at 20:15'. They are ordinary.

import { html } from "../vendor/lit-html-3.3.3.js";
import { pastTime } from "./controls.js";
import { minutesFor } from "./running.js";
import { finishLoad, startLoad, startMachine } from "./presses.js";
import { say } from "./words.js";

const AGO = [5, 15, 40];

const fold = (title, content) => html`<details class="late-entry"><summary>${title}</summary>${content}</details>`;

const ago = (id, use) => html`<div class="choices">${AGO.map((minutes) =>
  html`<button type="button" @click=${() => use({ minutesAgo: minutes })}>${say(id, { minutes })}</button>`)}</div>`;

const allGood = (load) => Object.fromEntries(Object.entries(load.pieces).map(([tray, good]) => [tray, { good }]));

export const lateStart = (load) => fold(say("late-start"), html`
  ${ago("late-started-ago", (extra) => startLoad(load, extra))}
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(undefined, load, null, { at, counts: allGood(load) }))}`);

export const lateRunning = (here) => fold(say("late-running"), ago("late-running-ago", (extra) => startMachine(here.load, minutesFor(here), extra)));

/** The late endings of a load at hand. */
export const lateDone = (run, load) => html`
  <p class="ask">${say("late-finished")}</p><div class="choices">${AGO.map((minutes) => html`<button type="button" @click=${() => finishLoad(run, load, null, { minutesAgo: minutes })}>${say("late-done-ago", { minutes })}</button>`)}</div>
  ${pastTime(say("late-done-at"), say("late-done"), (at) => finishLoad(run, load, null, { at }))}`;
