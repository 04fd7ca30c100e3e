// A person's session: 'How long have you got?' at its beginning, the lock-up list at its end.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { atLocal, now, timeOfDay } from "./clock.js";
import { inSession, openLoads } from "./doing.js";
import { redraw } from "./drawing.js";
import { stationName } from "./names.js";
import { isoIn, press } from "./press.js";
import { closeSheet, openSheet, sheetHead } from "./sheet.js";
import { tick, toggle } from "./startlist.js";
import { list, say } from "./words.js";

const LOCK_UP = ["rags", "power", "chargers", "bins", "smoulder", "first-job"];

/** Asks once a session; everything else stays in sight below. */
export function howLong({ state, me }) {
  if (!me || inSession(state, me)) return nothing;
  return html`<section class="panel act"><h2>${say("session-how-long")}</h2>${choices((until) => came(until))}</section>`;
}

const came = (until) => press(say("did-came", { until }), [{ kind: "person came", body: { until } }]);

function choices(use) {
  const fixed = ["18:00", "22:00"].map((hhmm) => [hhmm, atLocal(hhmm)]).filter(([, ms]) => ms > now() + 20 * 60_000).slice(0, 2);
  const other = (event) => {
    event.preventDefault();
    const hhmm = new FormData(event.target).get("until");
    if (!hhmm) return;
    const today = atLocal(hhmm);
    use(new Date(today > now() ? today : atLocal(hhmm, now(), 1)).toISOString());
  };
  return html`<div class="choices even">
      <button type="button" @click=${() => use(isoIn(60))}>${say("session-hours", { hours: 1 })}</button>
      <button type="button" @click=${() => use(isoIn(120))}>${say("session-hours", { hours: 2 })}</button>
      ${fixed.map(([, ms]) => html`<button type="button" aria-label=${say("session-until", { until: timeOfDay(ms) })} @click=${() => use(new Date(ms).toISOString())}>${timeOfDay(ms)}</button>`)}
    </div>
    <details><summary>${say("session-other")}</summary>
      <form class="inline" @submit=${other}><label>${say("session-until-label")}<input type="time" name="until" required></label><button>${say("ui-ok")}</button></form></details>`;
}

/** How long a person still has; changed with one press. */
export function sessionEnd({ state, me }) {
  if (!inSession(state, me)) return nothing;
  return html`<section class="session"><h2>${say("session-today")}</h2>
    <p>${say("session-until-now", { until: state.people[me].until })}</p>
    <details><summary>${say("session-change")}</summary>${choices((until) => sayTime(until))}</details>
    <button type="button" class="full" @click=${() => openLockUp()}>${say("go-stop")}</button></section>`;
}

export const sayTime = (until) => press(say("did-time", { until }), [{ kind: "time said", body: { until } }]);

/** The list at the end of a session. */
export function openLockUp() {
  const ticked = new Set();
  const went = () => {
    closeSheet();
    press(say("did-went"), [{ kind: "person went", body: { ticked: LOCK_UP.filter((key) => ticked.has(key)) } }]);
  };
  openSheet((scene) => {
    const running = openLoads(scene.state).filter((load) => load.state === "running" && (!load.watcher || load.watcher === scene.me));
    return html`${sheetHead(say("lockup-title"))}
      ${running.length ? html`<p class="cautions">${say("lockup-running", { stations: list(running.map((load) => stationName(scene.state, load.station))) })}</p>` : nothing}
      ${LOCK_UP.map((key) => tick(say(`lockup-${key}`), ticked.has(key), () => { toggle(ticked, key); redraw(); }))}
      <button type="button" class="go" ?disabled=${ticked.size < LOCK_UP.length || running.length} @click=${went}>
        ${ticked.size < LOCK_UP.length ? say("list-left", { left: LOCK_UP.length - ticked.size }) : say("go-stop")}</button>
      ${ticked.size < LOCK_UP.length && !running.length ? html`<button type="button" class="quiet full spaced" @click=${went}>${say("lockup-not-all")}</button>` : nothing}`;
  });
}
