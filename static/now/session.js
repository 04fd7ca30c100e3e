// A person's session: 'How long have you got?', and until when.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { atLocal, millis, now, timeOfDay, weekday } from "../door/clock.js";
import { open } from "../door/later.js";
import { isoIn, press, sayTime } from "../door/press.js";
import { redraw } from "../door/screen.js";
import { say } from "../door/words.js";
import { inSession } from "../views/doing.js";
import { button } from "../views/sheet.js";

/** Whether it is asked how long somebody has, who has not begun anything yet. */
export const asksHowLong = ({ state, me }) => Boolean(me && !inSession(state, me) && !state.people?.[me]?.hands);

/** Asks once a session; everything else stays in sight below. */
export function howLong({ state, me }) {
  if (!me || inSession(state, me)) return nothing;
  return html`<section class="panel act"><h2>${say("session-how-long")}</h2>${choices(came, state)}</section>`;
}

// Whoever is back after all says so; until then nothing asks to start again.
let back = false;

/** Whether a person has locked up today and pressed nothing since. */
export function isOver({ state, me }) {
  const mine = state.people?.[me];
  return !back && Boolean(mine?.went_at && mine.went_at === mine.seen_at && !mine.came_at) && atLocal("00:00") <= millis(mine.went_at);
}

/** After 'Finish for today': what comes next time. */
export const over = ({ state, me }, next) => html`<section class="panel"><h1>${say("session-over", { at: state.people[me].went_at })}</h1>
  <p>${next ? say("session-next", { next }) : say("session-next-nothing")}</p>
  ${button(say("session-back"), () => { back = true; redraw(); }, "full quiet")}</section>`;

const came = (until) => press(say("did-came", { until }), [{ kind: "person came", body: { until } }]);

// The usual end of the day first, where the shop knows one for today.
function ends(state) {
  const usual = state.usual_ends?.[weekday()];
  const open = [...new Set([usual, "18:00", "22:00"])].filter(Boolean).map((hhmm) => [hhmm, atLocal(hhmm, now(), hhmm === "00:00" ? 1 : 0)]);
  return open.filter(([, ms]) => ms > now() + 20 * 60_000).slice(0, 2).map(([hhmm, ms]) => ({ ms, isUsual: hhmm === usual }));
}

function choices(use, state) {
  const offered = ends(state);
  const other = (event) => {
    event.preventDefault();
    const hhmm = new FormData(event.target).get("until");
    if (!hhmm) return;
    const today = atLocal(hhmm);
    use(new Date(today > now() ? today : atLocal(hhmm, now(), 1)).toISOString());
  };
  return html`<div class="choices even">
      ${[1, 2].map((hours) => button(say("session-hours", { hours }), () => use(isoIn(60 * hours))))}
      ${offered.filter(({ isUsual }) => !isUsual).map(({ ms }) => html`<button type="button" aria-label=${say("session-until", { until: timeOfDay(ms) })} @click=${() => use(new Date(ms).toISOString())}>${timeOfDay(ms)}</button>`)}
    </div>
    ${offered.filter(({ isUsual }) => isUsual).map(({ ms }) => button(say("session-usual", { until: timeOfDay(ms) }), () => use(new Date(ms).toISOString()), "full spaced"))}
    <details><summary>${say("session-other")}</summary>
      <form class="inline" @submit=${other}><label>${say("session-until-label")}<input type="time" name="until" required></label><button>${say("ui-ok")}</button></form></details>`;
}

/** How long a person still has; changed with one press. */
export function sessionEnd({ state, me }) {
  if (!inSession(state, me)) return nothing;
  return html`<section class="session"><h2>${say("session-today")}</h2>
    <p>${say("session-until-now", { until: state.people[me].until })}</p>
    <details><summary>${say("session-change")}</summary>${choices(sayTime, state)}</details>
    ${button(say("go-stop"), () => open("lock-up"), "full")}</section>`;
}
