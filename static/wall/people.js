// Who is in the shop, and what their hands are at.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { handsOf, inSession } from "../views/doing.js";
import { loadTitle, say } from "../door/words.js";

export function people(state) {
  const here = Object.entries(state.people ?? {}).filter(([key, one]) => !one.removed && (inSession(state, key) || one.hands));
  if (!here.length) return nothing;
  return html`<section><h2 class="head">${say("wall-people")}</h2><ul>
    ${here.map(([key, one]) => html`<li><span><b>${one.name}</b> ${doing(state, key, one)}</span>${one.until ? html`<time>${say("wall-until", { until: one.until })}</time>` : nothing}</li>`)}</ul></section>`;
}

function doing(state, key, one) {
  if (one.away) return say("wall-away");
  const hands = handsOf(state, key);
  if (!hands) return say("wall-free");
  return hands.job ? hands.job.name ?? hands.job.key : loadTitle(hands.run, hands.load);
}
