// What the plan adds to the moves: why one comes first, what would be later for another, what it is too late for, that it is an
// older plan; which order lines it cannot hold, and what clashes where there is no plan.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, now, span } from "../door/clock.js";
import { unseen } from "../door/outbox.js";
import { serverReached } from "../door/shop.js";
import { lineWords, say, sayCode, sayLater, slug, stationName } from "../door/words.js";
import { isLead } from "../views/doing.js";

// A plan is made anew in a moment after every press: only one that stays behind is spoken of.
const PATIENCE_MS = 4000;
const PAST_MS = 5 * 60_000;
const SPANS = ["minutes", "longest"];
let behindSince = 0;

const orderOf = (state, { run, line }) => state.runs?.[run]?.orders?.find((order) => order.line === line);

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
const tooLate = ({ state }) =>
  (state.too_late ?? []).filter((load) => millis(load.at) > now()).map((load) => html`<p class="soft late-load">${say("too-late", {
    station: stationName(state, load.station), minutes: Math.round(load.minutes), left: Math.max(1, Math.round(minutesTo(load.at))),
  })}</p>`);

/** Says that what comes first, and the prices, are of an older plan. */
const olderPlan = ({ state }) =>
  (isBehind(state) ? html`<p class="soft older-plan">${say("prices-older", { at: state.plan.at })}</p>` : nothing);

function isBehind({ plan, seq }) {
  const behind = plan && plan.seq < seq;
  if (!behind) behindSince = 0;
  else behindSince ||= now();
  return behind && now() - behindSince > PATIENCE_MS;
}

// The server makes a plan anew each minute while somebody is there; without the server its moments grow old.
const isPast = (plan, { facts }) => millis(facts.at) <= now() || (!serverReached() && now() - millis(plan.at) > PAST_MS);

/** Which order lines are late, and which will be by the plan, with the way to it. */
function lateLines({ state, runs }) {
  const is = runs.flatMap((run) => (run.orders ?? []).filter((order) => order.due && millis(order.due) <= now() && (order.good ?? 0) < order.pieces))
    .map((order) => say("late-line-is", { what: lineWords(order), good: order.good ?? 0, pieces: order.pieces, due: order.due }));
  const will = (state.plan?.late ?? []).filter((line) => millis(line.due) > now()).map((line) => ({ ...orderOf(state, line), ...line }))
    .map((order) => say(order.there ? "late-line-will" : "late-line-few", { what: lineWords(order), pieces: order.pieces, due: order.due, there: order.there ?? "" }));
  return is.length + will.length ? html`<div class="notice late-lines">${[...is, ...will].map((words) => html`<p>${words}</p>`)}
    <a class="button full" href="/plan">${say("go-plan-page")}</a></div>` : nothing;
}

/** One soft line; nothing where a plan holds all there is, or nobody plans. */
function unplanned({ state, me }) {
  const { none, looking, unfound, clash } = state.plan ?? {};
  if (looking) return html`<p class="soft unplanned">${say("unplanned-looking")}</p>`;
  if ((none || unfound) && !isLead(state, me)) return html`<p class="soft unplanned">${say("unplanned")}</p>`;
  const without = unfound ? "plan-not-found" : none && "plan-no-place";
  const words = without && !clash ? sayLater("en.plan", without) : clash && sayLater("en.plan", `left-out-${slug(clash.code)}`, factsOf(clash));
  return words ? html`<p class="row unplanned"><span class="soft">${words}</span><a class="button" href="/plan">${say("go-plan-page")}</a></p>` : nothing;
}

function factsOf({ facts }) {
  const spans = SPANS.filter((name) => facts[name] !== undefined).map((name) => [name, span(facts[name])]);
  return { ...facts, ...Object.fromEntries(spans), skill: facts.skill || "none" };
}

/** All that the plan says beside the moves. */
export const planWords = (scene) => [lateLines(scene), tooLate(scene), olderPlan(scene), unplanned(scene)];
