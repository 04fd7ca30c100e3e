// What runs until when, above the fold: time of day larger than time left. It never says that a machine may be left.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, moment, now, span } from "./clock.js";
import { isOverdue, isWatched, loadAt, ringing } from "./doing.js";
import { loadWords, personName, roomName } from "./names.js";
import { press } from "./press.js";
import { openLoadSheet } from "./load_sheet.js";
import { shape } from "./shapes.js";
import { list, say } from "./words.js";

const MACHINES = ["cnc", "laser", "heater", "other machine"];

export function machines(scene) {
  const { state } = scene;
  const stations = Object.entries(state.stations ?? {}).map(([key, station]) => ({ key, ...station }));
  const rows = stations.map((station) => ({ station, load: loadAt(state, station.load) })).filter(({ station, load }) => wantsRow(scene, station, load));
  const idle = stations.filter((station) => MACHINES.includes(station.kind) && !station.load && !station.out);
  return html`<section aria-labelledby="machines-title"><h2 class="unseen" id="machines-title">${say("ui-machines")}</h2>
    ${rows.map(({ station, load }) => machine(scene, station, load))}
    ${idle.length ? html`<p class="idle-line">${shape("idle")}<span>${say("machines-idle", { stations: list(idle.map((one) => one.name)) })}</span></p>` : nothing}
  </section>`;
}

function wantsRow({ state, me }, station, load) {
  if (station.out) return true;
  if (!load) return false;
  if (["running", "ended", "stopped"].includes(load.state)) return true;
  // What my own hands are at stands above, as the sentence.
  return MACHINES.includes(station.kind) && !load.people?.includes(me) && Boolean(state.runs[load.run]);
}

/** The state of a machine in a word of the word list. */
export function machineState(state, station, load) {
  if (station?.out && !load) return "out of use";
  if (!load) return "idle";
  if (load.state === "stopped") return "stopped early";
  if (load.state === "ended") return "needs unloading";
  if (load.state === "running") {
    if (isOverdue(load)) return "overdue";
    return ringing(state).some((due) => due.kind === "watch check" && due.load === load.id) ? "watch check due" : "running";
  }
  return load.people?.length ? "at it" : "put aside";
}

function machine(scene, station, load) {
  const { state } = scene;
  const word = machineState(state, station, load);
  if (!load) {
    const words = [say("state-out-of-use"), station.out.why, station.out.until ? say("machines-out-until", { until: station.out.until }) : ""].filter(Boolean).join(", ");
    return html`<div class="machine out">${shape(word)}<span class="name">${station.name}</span><span class="word">${words}</span>
      <button type="button" @click=${() => press(say("did-back-in-use", { station: station.name }), [{ kind: "station back in use", station: station.key }])}>${say("machines-back")}</button></div>`;
  }
  const run = state.runs[load.run];
  const parts = [wordFor(state, word, load), loadWords(run, load)].filter(Boolean).join(", ");
  const watched = load.state === "running" && isWatched(state, load);
  return html`<button type="button" class="machine ${word.replaceAll(" ", "-")}" @click=${() => openLoadSheet(load)}>
    ${shape(word)}<span class="name">${station.name}</span>
    <span class="word">${parts}${watched ? html`. <b>${say("machines-stay", { room: roomName(state, station.room) })}</b>` : nothing}</span>
    ${load.end_at && ["running", "ended"].includes(load.state) ? until(load) : nothing}
  </button>`;
}

const wordFor = (state, word, load) =>
  word === "at it" ? say("state-at-it", { person: personName(state, load.people[0]), doing: say(`doing-${load.state}`) }) : say(`state-${word.replaceAll(" ", "-")}`);

function until(load) {
  const left = minutesTo(load.end_at);
  const begun = millis(load.phase_at ?? load.started_at);
  const share = Math.min(100, Math.max(0, (100 * (now() - begun)) / (millis(load.end_at) - begun)));
  return html`<span class="at">${moment(load.end_at)}</span>
    <span class="left">${left > 0 ? span(left) : say("ui-ago", { span: span(-left) })}</span>
    <span class="rule" .style=${`--done:${share.toFixed(1)}%`}></span>`;
}
