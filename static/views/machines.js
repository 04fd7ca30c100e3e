// What runs until when, above the fold: time of day larger than time left. It never says that a machine may be left.
// Colour is never alone: each state has a shape and a word of its own.

import { html, nothing, svg } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, moment, now, span } from "../door/clock.js";
import { open } from "../door/later.js";
import { press } from "../door/press.js";
import { list, loadWords, personName, say, slug, stationName } from "../door/words.js";
import { isMissed, isOverdue, isWatch, isWatched, loadAt, ringingFor, saidRunning, watcherOf } from "./doing.js";
import { button } from "./sheet.js";

const SHAPES = {
  running: svg`<circle cx="12" cy="12" r="10.5" class="fill"/><path d="M9.3 7.2v9.6l7.6-4.8z" class="on"/>`,
  "needs unloading": svg`<rect x="2" y="2" width="20" height="20" rx="3" class="fill"/><path d="M12 17V8m-4 4 4-4.5 4 4.5" class="stroke-on"/>`,
  overdue: svg`<path d="M12 1.5 23 21.5H1z" class="fill"/><path d="M12 8.5v6m0 2.4v.6" class="stroke-on"/>`,
  "stopped early": svg`<path d="M7.6 1.5h8.8l6.1 6.1v8.8l-6.1 6.1H7.6l-6.1-6.1V7.6z" class="fill"/><path d="M8 12h8" class="stroke-on"/>`,
  "watch check due": svg`<path d="M12 1 23 12 12 23 1 12z" class="fill"/><path d="M12 6.8v6.4m0 2.6v.6" class="stroke-on"/>`,
  "watch check missed": svg`<path d="M12 1 23 12 12 23 1 12z" class="fill"/><path d="M9 6.8v6.4m0 2.6v.6m6-9.6v6.4m0 2.6v.6" class="stroke-on"/>`,
  "nobody near": svg`<path d="M12 1 23 12 12 23 1 12z" class="fill"/><path d="m8.5 8.5 7 7m0-7-7 7" class="stroke-on"/>`,
  "at it": svg`<rect x="2" y="2" width="20" height="20" rx="3" class="line"/><circle cx="12" cy="12" r="4" class="fill"/>`,
  "put aside": svg`<rect x="3" y="3" width="18" height="18" rx="3" class="line"/><path d="M9.5 8v8m5-8v8" class="stroke"/>`,
  "out of use": svg`<circle cx="12" cy="12" r="9.5" class="line"/><path d="m5.5 5.5 13 13" class="stroke"/>`,
  idle: svg`<circle cx="12" cy="12" r="9" class="line dashed"/>`,
};

/** The shape of a machine's state, coloured by its class. */
export const shape = (state) =>
  html`<svg class="shape ${slug(state)}" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${SHAPES[state] ?? SHAPES.idle}</svg>`;

/** Every station with its load: those that `isBusy(station)` says, and the machines of the others. */
export function stationsOf(state, isBusy) {
  const all = Object.entries(state.stations ?? {}).map(([key, station]) => ({ ...station, key, holds: station.load, load: loadAt(state, station.load) }));
  const busy = all.filter(isBusy);
  return { busy, idle: all.filter((station) => station.machine && !busy.includes(station)) };
}

export const isAtWork = (load) => ["running", "ended", "stopped"].includes(load?.state);

export const idleLine = (idle) =>
  (idle.length ? html`<p class="idle-line">${shape("idle")}<span>${say("machines-idle", { stations: list(idle.map((station) => station.name)) })}</span></p>` : nothing);

export function machines(scene) {
  const { state } = scene;
  const said = saidRunning(state);
  const { busy, idle } = stationsOf(state, (station) => wantsRow(scene, station));
  const free = idle.filter((station) => !station.holds && !said.some((call) => call.station === station.key));
  return html`<section aria-labelledby="machines-title"><h2 class="unseen" id="machines-title">${say("ui-machines")}</h2>
    ${busy.map((station) => machine(scene, station))}${said.map((load) => saidRow(state, load))}${idleLine(free)}
  </section>`;
}

// What my own hands are at stands above, as the sentence.
const wantsRow = ({ me }, { out, load, machine: isMachine }) =>
  Boolean(out || isAtWork(load) || (load && isMachine && !load.people?.includes(me)));

/** The state of a machine in a word of the word list. */
export function machineState(state, station, load) {
  if (station?.out && !load) return "out of use";
  if (!load) return "idle";
  if (load.state === "stopped") return "stopped early";
  if (load.state === "ended") return "needs unloading";
  if (load.state === "running") {
    const asked = ringingFor(state, load).filter((due) => isWatch(due) && !due.said);
    if (asked.some((due) => due.kind === "nobody near")) return "nobody near";
    if (asked.some(isMissed)) return "watch check missed";
    if (isOverdue(load)) return "overdue";
    return asked.length ? "watch check due" : "running";
  }
  return load.people?.length ? "at it" : "put aside";
}

function machine(scene, station) {
  const { state } = scene;
  const { load } = station;
  const word = machineState(state, station, load);
  if (!load) {
    const words = [say("state-out-of-use"), station.out.why, station.out.until ? say("machines-out-until", { until: station.out.until }) : ""].filter(Boolean).join(", ");
    return html`<div class="machine out">${shape(word)}<span class="name">${station.name}</span><span class="word">${words}</span>
      ${button(say("machines-back"), () => press(say("did-back-in-use", { station: station.name }), [{ kind: "station back in use", station: station.key }]))}</div>`;
  }
  const parts = [stateWords(state, word, load), loadWords(state.runs[load.run], load)].filter(Boolean).join(", ");
  return html`<button type="button" class="machine ${slug(word)}" @click=${() => open("load", load)}>
    ${shape(word)}<span class="name">${station.name}</span>
    <span class="word">${parts}${load.state === "running" && isWatched(state, load) ? html`. <b>${watchWords(scene, load)}</b>` : nothing}</span>
    ${load.end_at && ["running", "ended"].includes(load.state) ? until(load) : nothing}
  </button>`;
}

/** 'Robin is watching' to everybody else, while Robin does; to Robin that it is Robin; else to stay and watch. */
function watchWords({ state, me }, load) {
  const watcher = watcherOf(state, load);
  if (!watcher) return say("machines-stay");
  return watcher === me ? say("machines-you-watch") : say("machines-watching", { person: personName(state, watcher) });
}

const saidRow = (state, load) => html`<button type="button" class="machine watch-check-due" @click=${() => open("said", load)}>
  ${shape("watch check due")}<span class="name">${stationName(state, load.station)}</span><span class="word">${say("machines-said")}</span>${until(load)}</button>`;

/** The sentence for a machine's state. */
export const stateWords = (state, word, load) =>
  word === "at it" ? say("state-at-it", { person: personName(state, load.people[0]), doing: say(`doing-${load.state}`) }) : say(`state-${slug(word)}`);

/** How long a load still runs, or since when it is over. */
export function leftWords(load) {
  const left = minutesTo(load.end_at);
  return left > 0 ? span(left) : left > -1 ? say("ui-now") : say("ui-ago", { span: span(-left) });
}

function until(load) {
  const begun = millis(load.phase_at ?? load.started_at);
  const share = Math.min(100, Math.max(0, (100 * (now() - begun)) / (millis(load.end_at) - begun)));
  return html`<span class="at">${moment(load.end_at)}</span><span class="left">${leftWords(load)}</span>
    <span class="rule" .style=${`--done:${share.toFixed(1)}%`}></span>`;
}
