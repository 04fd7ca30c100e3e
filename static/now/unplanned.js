// Where no plan is possible: that there is none, and for a lead what clashes, with the way to the Plan page.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { span } from "./clock.js";
import { isLead } from "./doing.js";
import { redraw } from "./sheet.js";
import { knows, openWords, say, slug } from "./words.js";

const SPANS = ["minutes", "longest"];
let wished = false;

/** One soft line; nothing where a plan holds all there is, or nobody plans. */
export function unplanned({ state, me }) {
  const { none, clash } = state.plan ?? {};
  if (none && !isLead(state, me)) return html`<p class="soft unplanned">${say("unplanned")}</p>`;
  const words = none ? sentence("plan-no-place") : clash && sentence(`left-out-${slug(clash.code)}`, factsOf(clash));
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
