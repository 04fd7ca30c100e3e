// What the plan adds to the moves: how much later all would be done, what it is too late for, and that it is an older plan.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, now } from "./clock.js";
import { say, stationName } from "./words.js";

// A plan is made anew in a moment after every press: only one that stays behind is spoken of.
const PATIENCE_MS = 4000;
let behindSince = 0;

/** 'all done 25 min later', for a move that has a price. */
export function priceWords({ price }) {
  if (!price) return "";
  if (price.windows) return say("price-windows", { windows: price.windows });
  const minutes = Math.round(price.minutes);
  return minutes ? say("price-minutes", { minutes }) : say("price-none");
}

/** 'Too late to load the Laser: it takes 25 min, and you stop in 15 min.' */
export const tooLate = ({ state }) =>
  (state.too_late ?? []).filter((one) => millis(one.at) > now()).map((one) => html`<p class="soft late-load">${say("too-late", {
    station: stationName(state, one.station), minutes: Math.round(one.minutes), left: Math.max(1, Math.round(minutesTo(one.at))),
  })}</p>`);

/** Says that what comes first, and the prices, are of an older plan. */
export function olderPlan({ state }) {
  const behind = state.plan && state.plan.seq < state.seq;
  if (!behind) behindSince = 0;
  else behindSince ||= now();
  return behind && now() - behindSince > PATIENCE_MS ? html`<p class="soft older-plan">${say("prices-older", { at: state.plan.at })}</p>` : nothing;
}
