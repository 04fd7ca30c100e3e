// A person's session: 'How long have you got?', and until when.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { atLocal, millis, now, timeOfDay } from "../door/clock.js";
import { inSession } from "../views/doing.js";
import { openLockUp } from "../door/later.js";
import { isoIn, press } from "../door/press.js";
import { redraw } from "../views/sheet.js";
import { say } from "../door/words.js";

/** Asks once a session; everything else stays in sight below. */
export function howLong({ state, me }) {
  if (!me || inSession(state, me)) return nothing;
  return html`<section class="panel act"><h2>${say("session-how-long")}</h2>${choices((until) => came(until))}</section>`;
}

// Whoever is back after all says so; until then nothing asks to start again.
let back = false;

/** Whether a person has locked up today and pressed nothing since. */
export function isOver({ state, me }) {
  const one = state.people?.[me];
  return !back && Boolean(one?.went_at && one.went_at === one.seen_at && !one.came_at) && atLocal("00:00") <= millis(one.went_at);
}

/** After 'Finish for today': what comes next time. */
export const over = ({ state, me }, next) => html`<section class="panel"><h1>${say("session-over", { at: state.people[me].went_at })}</h1>
  <p>${next ? say("session-next", { next }) : say("session-next-nothing")}</p>
  <button type="button" class="full quiet" @click=${() => { back = true; redraw(); }}>${say("session-back")}</button></section>`;

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
