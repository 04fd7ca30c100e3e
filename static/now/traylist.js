// The trays: number, strip, next step in words, count.

import { html, nothing, repeat } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "./clock.js";
import { inOrder, personName, routeOf, stationName, sum } from "./names.js";
import { strip } from "./strip.js";
import { say } from "./words.js";

export function trays({ state, run, several }) {
  if (!run) return nothing;
  const ids = inOrder(Object.keys(run.trays ?? {})).filter((id) => hasPieces(run.trays[id]));
  return html`<section><h2>${several ? say("ui-trays-of", { run: run.name }) : say("ui-trays-title")}</h2><ul class="rows">
    ${repeat(ids, (id) => id, (id) => row(state, run, run.trays[id]))}</ul></section>`;
}

export const hasPieces = (tray) => sum(tray.at) + (tray.good ?? 0) > 0;

const row = (state, run, tray) => html`<li class="tray ${tray.holds?.length ? "held" : ""}">
  <a class="no" href=${`/trays?run=${run.id}#tray-${tray.id}`} aria-label=${say("ui-tray", { tray: tray.id })}>${tray.id}</a>
  ${strip(run, tray)}<span class="next"><b>${nextWords(state, run, tray)}</b><span>${countWords(tray)}</span></span></li>`;

export function countWords(tray) {
  const scrap = Object.values(tray.scrap ?? {}).flat().reduce((total, one) => total + one.pieces, 0);
  const pieces = sum(tray.at);
  return [pieces ? say("count-pieces", { pieces }) : "", tray.good ? say("count-good", { good: tray.good }) : "", scrap ? say("count-scrap", { scrap }) : ""].filter(Boolean).join(", ");
}

/** What comes next for a tray, in words. */
export function nextWords(state, run, tray) {
  const hold = tray.holds?.[0];
  if (hold) return say(hold.until ? "tray-held-until" : "tray-held", { why: hold.why, until: hold.until });
  const step = routeOf(run, tray.id).find((one) => tray.at?.[one.key]);
  if (!step) return say("tray-done");
  if (tray.busy?.[step.key]) return busyWords(state, run, tray, step);
  const rest = restBefore(run, tray, step);
  if (rest && millis(rest.ready_at) > now()) return say(`tray-resting-${rest.why}`, { until: rest.ready_at, next: step.name });
  return say("tray-next", { next: step.name });
}

function busyWords(state, run, tray, step) {
  const load = Object.values(run.loads ?? {}).find((one) => one.step === step.key && one.pieces?.[tray.id] && !["done", "off"].includes(one.state));
  if (!load) return say("tray-started", { step: step.name });
  if (["running", "ended", "stopped"].includes(load.state)) return say(`tray-on-machine-${load.state}`, { station: stationName(state, load.station), until: load.end_at ?? "" });
  return load.people?.length ? say("tray-at-it", { step: step.name, person: personName(state, load.people[0]) }) : say("tray-put-aside", { step: step.name });
}

export function restBefore(run, tray, step) {
  const steps = routeOf(run, tray.id);
  const before = steps[steps.findIndex((one) => one.key === step.key) - 1];
  const rest = before && tray.rests?.[before.key];
  return rest && !rest.ended_at ? rest : null;
}

