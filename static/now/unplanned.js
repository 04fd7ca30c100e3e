// What the plan cannot hold: order lines that are or will be late; where there is no plan: that one is looked for, or that there is none, and for a lead what clashes, with the way to the Plan page.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now, span } from "../door/clock.js";
import { isLead } from "../views/doing.js";
import { redraw } from "../views/sheet.js";
import { knows, lineWords, openWords, say, slug } from "../door/words.js";

const SPANS = ["minutes", "longest"];
let wished = false;

export const orderOf = (state, { run, line }) => state.runs?.[run]?.orders?.find((one) => one.line === line);

/** Which order lines are late, and which will be by the plan, with the way to it. */
export function lateLines({ state, runs }) {
  const is = runs.flatMap((run) => (run.orders ?? []).filter((one) => one.due && millis(one.due) <= now() && (one.good ?? 0) < one.pieces))
    .map((one) => say("late-line-is", { what: lineWords(one), good: one.good ?? 0, pieces: one.pieces, due: one.due }));
  const will = (state.plan?.late ?? []).filter((one) => millis(one.due) > now()).map((one) => ({ ...orderOf(state, one), ...one }))
    .map((one) => say(one.there ? "late-line-will" : "late-line-few", { what: lineWords(one), pieces: one.pieces, due: one.due, there: one.there ?? "" }));
  return is.length + will.length ? html`<div class="notice late-lines">${[...is, ...will].map((words) => html`<p>${words}</p>`)}
    <a class="button full" href="/plan">${say("go-plan-page")}</a></div>` : nothing;
}

/** One soft line; nothing where a plan holds all there is, or nobody plans. */
export function unplanned({ state, me }) {
  const { none, looking, unfound, clash } = state.plan ?? {};
  if (looking) return html`<p class="soft unplanned">${say("unplanned-looking")}</p>`;
  if ((none || unfound) && !isLead(state, me)) return html`<p class="soft unplanned">${say("unplanned")}</p>`;
  const without = unfound ? "plan-not-found" : none && "plan-no-place";
  const words = without && !clash ? sentence(without) : clash && sentence(`left-out-${slug(clash.code)}`, factsOf(clash));
  return words ? html`<p class="row unplanned"><span class="soft">${words}</span><a class="button" href="/plan">${say("go-plan-page")}</a></p>` : nothing;
}

// These sentences are rare: they are fetched with the first that is wanted.
function sentence(id, facts) {
  if (knows(id)) return say(id, facts);
  if (!wished) openWords("en.plan").then(redraw, () => {});
  wished = true;
  return "";
}

function factsOf({ facts }) {
  const spans = SPANS.filter((name) => facts[name] !== undefined).map((name) => [name, span(facts[name])]);
  return { ...facts, ...Object.fromEntries(spans), skill: facts.skill || "none" };
}
