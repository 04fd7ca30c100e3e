// What the wall shows besides its calls: each machine that does something, who is in the shop, and what dries, cures or
// stands in clamps.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { moment } from "../door/clock.js";
import { list, loadTitle, personName, say, slug, stationName } from "../door/words.js";
import { handsOf, inSession, isWatched, openLoads, watcherOf } from "../views/doing.js";
import { idleLine, isAtWork, leftWords, machineState, shape, stateWords, stationsOf } from "../views/machines.js";
import { isLate, isReady, waiting, waitWords } from "../views/waits.js";

const MOST = 4;

/** Their state as shape and word, what is on them, and the time of day at which they end, the next end first. */
export function machines(state) {
  const { busy, idle } = stationsOf(state, ({ out, machine, load }) => out || isAtWork(load) || (machine && load));
  if (!busy.length && !idle.length) return nothing;
  return html`<section aria-label=${say("ui-machines")}>${busy.sort(byEnd).map((station) => machine(state, station))}${idleLine(idle)}</section>`;
}

const endOf = ({ load }) => (load?.end_at ? Date.parse(load.end_at) : Infinity);
const byEnd = (one, other) => endOf(one) - endOf(other) || 0;

function machine(state, station) {
  const { load } = station;
  const word = machineState(state, station, load);
  const what = load ? loadTitle(state.runs[load.run], load) : station.out?.why ?? "";
  const ends = load?.end_at && ["running", "ended"].includes(load.state);
  const until = !load && station.out?.until;
  return html`<article class="machine ${slug(word)}">${shape(word)}
    <div class="line"><h2>${station.name}</h2>${ends || until ? html`<time>${moment(ends ? load.end_at : until)}</time>` : nothing}</div>
    <div class="line"><p><b>${stateWords(state, word, load)}</b>${what ? html` · ${what}` : nothing}</p>${ends ? html`<span>${leftWords(load)}</span>` : nothing}</div>${watched(state, load)}</article>`;
}

function watched(state, load) {
  if (load?.state !== "running" || !isWatched(state, load)) return nothing;
  const watcher = watcherOf(state, load);
  return html`<p class="watch">${watcher ? html`<b>${say("machines-watching", { person: personName(state, watcher) })}</b>` : html`<b>${say("machines-stay")}</b> · ${say("wall-nobody-watches")}`}</p>`;
}

/** Who is here, and what their hands are at. */
export function people(state) {
  const here = Object.entries(state.people ?? {}).filter(([key, person]) => !person.removed && (inSession(state, key) || person.hands));
  if (!here.length) return nothing;
  return html`<section><h2 class="head">${say("wall-people")}</h2><ul>
    ${here.map(([key, person]) => html`<li><span><b>${person.name}</b> ${doing(state, key, person)}</span>${person.until ? html`<time>${say("wall-until", { until: person.until })}</time>` : nothing}</li>`)}</ul></section>`;
}

function doing(state, key, person) {
  if (person.away) return say("wall-away");
  const hands = handsOf(state, key);
  const watched = openLoads(state).filter((load) => load.state === "running" && isWatched(state, load) && watcherOf(state, load) === key);
  if (!hands) return watched.length ? say("wall-watching", { stations: list(watched.map((load) => stationName(state, load.station))) }) : say("wall-free");
  return hands.job ? hands.job.name ?? hands.job.key : loadTitle(hands.run, hands.load);
}

/** By the moment they are over; the nearest first, and no more than fit. */
export function waits(state) {
  const rows = waiting(state, (wait) => !isReady({ rest: { ready_at: wait.rest.latest_at ?? wait.rest.ready_at } }));
  if (!rows.length) return nothing;
  return html`<section><h2 class="head">${say("wall-waits")}</h2><ul>${rows.slice(0, MOST).map(waitRow)}</ul>
    ${rows.length > MOST ? html`<p class="more">${say("wall-more", { count: rows.length - MOST })}</p>` : nothing}</section>`;
}

function waitRow(wait) {
  const { rest } = wait;
  const when = rest.latest_at && isReady(wait) ? say("wait-by", { by: rest.latest_at }) : say("wait-from", { from: rest.ready_at });
  return html`<li class=${isLate(wait) ? "late" : ""}><span>${waitWords(wait)}</span><time>${when}</time></li>`;
}
