// Somebody at a tray calls: the lead goes there, or looks at a first piece and says whether the rest may follow.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { careText } from "../views/cautions.js";
import { callOf, isLead } from "../views/doing.js";
import { answer, press } from "../door/press.js";
import { personName, say, stepOf } from "../door/words.js";

/** What a call's sentences may name. */
export function callFacts(state, call) {
  return {
    person: state.people?.[call.person]?.name ?? say("ui-somebody"), tray: call.tray, why: say(`call-why-${call.why.replace(" ", "-")}`),
    step: stepOf(state.runs?.[call.run], call.step, call.tray)?.name ?? "",
  };
}

export function callAnswers(scene, due) {
  const call = callOf(scene.state, due);
  const facts = callFacts(scene.state, call);
  const done = () => press(say("did-call-done", facts), [answer(due, "done")]);
  const going = () => press(say("did-call-going", facts), [{ kind: "alert claimed", run: call.run, tray: call.tray, body: { alert: due.id } }]);
  return html`${call.note ? html`<p>${call.note}</p>` : nothing}${call.times ? html`<p class="soft">${say("call-times", call)}</p>` : nothing}
    ${call.why === "hurt" ? html`<p><b>${careText("emergency", { number: scene.state.shop?.emergency ?? "112" })}</b></p>` : nothing}
    ${call.why === "look" ? lookAnswers(scene.state, due, call) : html`<button type="button" class="go" @click=${going}>${say("call-going")}</button>
      <div class="pair"><button type="button" @click=${done}>${say("call-done")}</button></div>`}`;
}

// One look lets all the trays go on that were given together.
function lookAnswers(state, due, call) {
  const facts = callFacts(state, call);
  const given = state.runs?.[call.run]?.given ?? {};
  const step = call.step || (Object.keys(given).find((key) => key.endsWith(`|${call.tray}`)) ?? "").split("|")[0];
  const together = Object.entries(given).filter(([key, one]) => key.startsWith(`${step}|`) && one.look && one.to === call.person).map(([key]) => key.split("|")[1]);
  const look = (result) => (tray) => ({ kind: "look given", run: call.run, tray, operation: step, body: { result } });
  const good = () => press(say("did-look-pass", facts), [...new Set([call.tray, ...together])].map(look("pass")).concat(answer(due, "done")));
  const notYet = () => press(say("did-look-fail", facts), [look("fail")(call.tray), answer(due, "done")]);
  return html`<button type="button" class="go" @click=${good}>${say("look-good")}</button>
    <div class="pair"><button type="button" @click=${notYet}>${say("look-not-yet")}</button></div>`;
}

/** Calls to which somebody is on the way, and one's own, until they are done. */
export function openCalls({ state, me }) {
  return Object.entries(state.calls ?? {}).map(([event, call]) => {
    const claim = state.answers?.[`call|${event}`];
    const own = call.person === me;
    if (claim?.answer !== "claimed" && !own) return nothing;
    if (!own && call.why === "look" && !isLead(state, me)) return nothing;
    const facts = callFacts(state, call);
    const done = () => press(say("did-call-done", facts), [answer({ id: `call|${event}`, run: call.run, tray: call.tray }, "done")]);
    const words = claim ? say("call-on-the-way", { ...facts, who: personName(state, claim.person) }) : say("call-own", facts);
    return html`<section class="asked"><p><b>${words}</b></p><button type="button" class="full" @click=${done}>${say(own ? "call-no-longer" : "call-done")}</button></section>`;
  });
}
