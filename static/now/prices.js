// What the plan adds to the moves: why one comes first, what would be later for another, what it is too late for, and
// that it is an older plan.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, now, span } from "../door/clock.js";
import { unseen } from "../door/outbox.js";
import { serverReached } from "../door/shop.js";
import { orderOf } from "./unplanned.js";
import { lineWords, say, sayCode, stationName } from "../door/words.js";

// A plan is made anew in a moment after every press: only one that stays behind is spoken of.
const PATIENCE_MS = 4000;
const PAST_MS = 5 * 60_000;
let behindSince = 0;

/** '6 of Anna's late by 2 h', 'all done 25 min later', 'two walks more', for a move that has a price: what weighs most. */
export function priceWords(state, { price }) {
  if (!price) return "";
  const [late] = price.late ?? [];
  if (late) return say("price-late", { ...late, what: lineWords(orderOf(state, late) ?? late), span: span(late.minutes), more: late.more ? "yes" : "no" });
  if (price.windows) return say("price-windows", { windows: price.windows });
  const minutes = Math.round(price.minutes);
  if (minutes) return say("price-minutes", { minutes });
  return price.walks ? say("price-walks", { walks: price.walks }) : say("price-none");
}

/** 'Engrave waits for it': the plan's reason for a move. '' where presses of this phone lie over the plan's state, or the
 *  plan has stayed behind: what was true of another state is not said of this one. */
export const why = ({ state }, { why: reason }) =>
  (unseen(state.seq).length || isBehind(state) || isPast(state.plan, reason) ? "" : sayCode("why", reason.code, reason.facts));

/** 'Too late to load the Laser: it takes 25 min, and you stop in 15 min.' */
export const tooLate = ({ state }) =>
  (state.too_late ?? []).filter((one) => millis(one.at) > now()).map((one) => html`<p class="soft late-load">${say("too-late", {
    station: stationName(state, one.station), minutes: Math.round(one.minutes), left: Math.max(1, Math.round(minutesTo(one.at))),
  })}</p>`);

/** Says that what comes first, and the prices, are of an older plan. */
export const olderPlan = ({ state }) =>
  (isBehind(state) ? html`<p class="soft older-plan">${say("prices-older", { at: state.plan.at })}</p>` : nothing);

function isBehind({ plan, seq }) {
  const behind = plan && plan.seq < seq;
  if (!behind) behindSince = 0;
  else behindSince ||= now();
  return behind && now() - behindSince > PATIENCE_MS;
}

// The server makes a plan anew each minute while somebody is there; without the server its moments grow old.
const isPast = (plan, { facts }) => millis(facts.at) <= now() || (!serverReached() && now() - millis(plan.at) > PAST_MS);
