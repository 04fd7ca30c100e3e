// 'Give to …': the lead gives an operation on chosen trays to a person, and may ask to see the first piece.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { isLead } from "../views/doing.js";
import { tick, toggle } from "../views/operation.js";
import { press } from "../door/press.js";
import { closeSheet, oneOf, openSheet, redraw, sheetHead } from "../views/sheet.js";
import { inOrder, routeOf, say, sum, trayWords } from "../door/words.js";

export const giveButton = ({ state, me, run }) =>
  (isLead(state, me) ? html`<button type="button" class="full spaced" @click=${() => openGive(run.id)}>${say("give-open")}</button>` : nothing);

function openGive(runId) {
  const it = { step: "", to: null, look: false, trays: new Set() };
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const steps = routeOf(run).filter((step) => traysBefore(run, step).length);
    if (!steps.length) return html`${sheetHead(say("give-title"))}<p>${say("give-nothing")}</p>`;
    const step = steps.find((one) => one.key === it.step) ?? steps[0];
    const ids = traysBefore(run, step);
    const trays = ids.filter((id) => it.trays.has(id));
    const people = Object.entries(state.people ?? {}).filter(([, one]) => !one.removed);
    const facts = { person: it.to ? state.people[it.to]?.name ?? "" : "…", step: step.name, trays: trayWords(trays.length ? trays : ids) };
    const record = () => {
      closeSheet();
      press(say(it.to ? "did-give" : "did-give-back", facts), [{ kind: "operation given", run: runId, operation: step.key, body: { to: it.to, trays, look: Boolean(it.to && it.look) } }]);
    };
    return html`${sheetHead(say("give-title"))}
      ${oneOf(say("give-operation"), steps.map((one) => [one.key, one.name]), step.key, (key) => { it.step = key; it.trays.clear(); })}
      <p class="ask">${say("give-which")}</p><div class="choices" role="group" aria-label=${say("give-which")}>
        ${ids.map((id) => html`<button type="button" aria-pressed=${String(it.trays.has(id))} @click=${() => { toggle(it.trays, id); redraw(); }}>${id}</button>`)}</div>
      ${oneOf(say("give-to"), [...people.map(([key, one]) => [key, one.name]), ["", say("give-nobody")]], it.to, (key) => { it.to = key; })}
      ${it.to ? tick(say("give-look"), it.look, () => { it.look = !it.look; redraw(); }) : nothing}
      <button type="button" class="go spaced" ?disabled=${!trays.length || it.to === null} @click=${record}>${say(it.to === "" ? "give-back" : "give-go", facts)}</button>`;
  });
}

/** The trays that have pieces at a step or before it. */
function traysBefore(run, step) {
  return inOrder(Object.keys(run.trays)).filter((id) => {
    const steps = routeOf(run, id);
    const index = steps.findIndex((one) => one.key === step.key);
    return index >= 0 && sum(Object.fromEntries(steps.slice(0, index + 1).map((one) => [one.key, run.trays[id].at?.[one.key] ?? 0])));
  });
}
