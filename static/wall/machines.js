// Each machine that does something: its state as shape and word, what is on it, and the time of day at which it ends.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { minutesTo, moment, span } from "../door/clock.js";
import { isWatched, loadAt, watcherOf } from "../views/doing.js";
import { machineState, shape } from "../views/machines.js";
import { list, loadTitle, personName, say } from "../door/words.js";

const MACHINES = ["cnc", "laser", "heater", "other machine"];

export function machines(state) {
  const stations = Object.entries(state.stations ?? {}).map(([key, station]) => ({ key, ...station, at: loadAt(state, station.load) }));
  const busy = stations.filter((one) => one.out || (one.at && (MACHINES.includes(one.kind) || ["running", "ended", "stopped"].includes(one.at.state))));
  const idle = stations.filter((one) => MACHINES.includes(one.kind) && !busy.includes(one));
  if (!busy.length && !idle.length) return nothing;
  return html`<section aria-label=${say("ui-machines")}>${busy.sort(byEnd).map((one) => machine(state, one))}
    ${idle.length ? html`<p class="idle">${shape("idle")}<span>${say("machines-idle", { stations: list(idle.map((one) => one.name)) })}</span></p>` : nothing}</section>`;
}

const endOf = ({ at }) => (at?.end_at ? Date.parse(at.end_at) : Infinity);
const byEnd = (one, other) => endOf(one) - endOf(other) || 0;

function machine(state, station) {
  const load = station.at;
  const word = machineState(state, station, load);
  const said = word === "at it" ? say("state-at-it", { person: personName(state, load.people[0]), doing: say(`doing-${load.state}`) }) : say(`state-${word.replaceAll(" ", "-")}`);
  const what = load ? loadTitle(state.runs[load.run], load) : station.out?.why ?? "";
  const ends = load?.end_at && ["running", "ended"].includes(load.state);
  const until = !load && station.out?.until;
  return html`<article class="machine ${word.replaceAll(" ", "-")}">${shape(word)}
    <div class="line"><h2>${station.name}</h2>${ends || until ? html`<time>${moment(ends ? load.end_at : until)}</time>` : nothing}</div>
    <div class="line"><p><b>${said}</b>${what ? html` · ${what}` : nothing}</p>${ends ? html`<span>${left(load)}</span>` : nothing}</div>${watched(state, load)}</article>`;
}

function watched(state, load) {
  if (load?.state !== "running" || !isWatched(state, load)) return nothing;
  const watcher = watcherOf(state, load);
  return html`<p class="watch">${watcher ? html`<b>${say("machines-watching", { person: personName(state, watcher) })}</b>` : html`<b>${say("machines-stay")}</b> · ${say("wall-nobody-watches")}`}</p>`;
}

function left(load) {
  const minutes = minutesTo(load.end_at);
  if (minutes > 0) return span(minutes);
  return minutes > -1 ? say("ui-now") : say("ui-ago", { span: span(-minutes) });
}
