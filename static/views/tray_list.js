// The trays: strip, next step in words, counts; and what dries, cures or stands in clamps, by time of day.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "../door/clock.js";
import { open } from "../door/later.js";
import { inOrder, personName, routeOf, say, stationName, sum } from "../door/words.js";
import { timesLine, timesOf } from "./finish.js";
import { loadWith, stepAfter, stepsTo } from "./pieces.js";
import { button } from "./sheet.js";
import { isLate, isReady, waiting, waitWords } from "./waits.js";

/** [{step, box}] with box one of done, started, wait, held or '' for not yet. */
function boxes(run, tray) {
  const steps = routeOf(run, tray.id);
  let before = 0; // pieces at this step or an earlier one
  return steps.map((step) => {
    const here = tray.at?.[step.key] ?? 0;
    const passed = Object.values(tray.counts?.[step.key] ?? {}).reduce((total, [good]) => total + good, 0);
    before += here;
    const rest = tray.rests?.[step.key];
    if (rest && !rest.ended_at && millis(rest.ready_at) > now()) return { step, box: "wait" };
    if (tray.holds?.some((hold) => hold.step === step.key)) return { step, box: "held" };
    if (tray.busy?.[step.key] || (here && passed)) return { step, box: "started" };
    return { step, box: before === 0 && (passed || leftAfter(tray, steps, step)) ? "done" : "" };
  });
}

// A rework tray, or one begun half-way, has no counts at the steps before it.
const leftAfter = (tray, steps, step) =>
  (tray.good ?? 0) > 0 || steps.slice(steps.indexOf(step) + 1).some((later) => tray.at?.[later.key]);

export function strip(run, tray) {
  const all = boxes(run, tray);
  const done = all.filter(({ box }) => box === "done").length;
  return html`<span class="strip" role="img" aria-label=${say("strip-label", { done, steps: all.length })}>
    ${all.map(({ step, box }) => html`<i class=${box} title=${step.name}></i>`)}</span>`;
}

export function trays({ state, run, several }) {
  if (!run) return nothing;
  const all = inOrder(Object.keys(run.trays ?? {})).map((id) => run.trays[id]);
  const done = all.filter((tray) => !isOpen(tray) && tray.good);
  const rows = (some) => html`<ul class="rows">${some.map((tray) => row(state, run, tray))}</ul>`;
  return html`<section><h2>${several ? say("ui-trays-of", { run: run.name }) : say("ui-trays-title")}</h2>
    ${rows(all.filter(isOpen))}
    ${done.length ? html`<details><summary>${say("trays-done", { count: done.length })}</summary>${rows(done)}</details>` : nothing}</section>`;
}

/** Pieces of it are still on their way. */
export const isOpen = (tray) => sum(tray.at) > 0;

const row = (state, run, tray) => html`<li class="tray ${tray.holds?.length ? "held" : ""}">
  <a class="no" href=${`/trays?run=${run.id}#tray-${tray.id}`} aria-label=${say("ui-tray", { tray: tray.id })}>${tray.id}</a>
  ${strip(run, tray)}<span class="next"><b>${nextWords(state, run, tray)}</b><span>${countWords(tray)}</span></span></li>`;

export function countWords(tray) {
  const scrap = Object.values(tray.scrap ?? {}).flat().reduce((total, reason) => total + reason.pieces, 0);
  const pieces = sum(tray.at);
  return [pieces ? say("count-pieces", { pieces }) : "", tray.good ? say("count-good", { good: tray.good }) : "", scrap ? say("count-scrap", { scrap }) : ""].filter(Boolean).join(", ");
}

/** What comes next for a tray, in words. */
export function nextWords(state, run, tray) {
  const hold = tray.holds?.[0];
  if (hold) return say(hold.until ? "tray-held-until" : "tray-held", { why: hold.why, until: hold.until });
  const step = routeOf(run, tray.id).find((each) => tray.at?.[each.key]);
  if (!step) return say("tray-done");
  if (tray.busy?.[step.key]) return busyWords(state, run, tray, step);
  const rest = restBefore(run, tray, step);
  if (rest && millis(rest.ready_at) > now()) return say(`tray-resting-${rest.why}`, { until: rest.ready_at, next: step.name });
  return say("tray-next", { next: step.name });
}

function busyWords(state, run, tray, step) {
  const load = loadWith(run, tray.id, step.key);
  if (!load) return say("tray-started", { step: step.name });
  if (["running", "ended", "stopped"].includes(load.state)) return say(`tray-on-machine-${load.state}`, { station: stationName(state, load.station), until: load.end_at ?? "" });
  return load.people?.length ? say("tray-at-it", { step: step.name, person: personName(state, load.people[0]) }) : say("tray-put-aside", { step: step.name });
}

// Of the waits before a step the one that is over last, wherever a step was put in meanwhile.
function restBefore(run, tray, step) {
  const waits = stepsTo(run, tray.id, step.key).slice(0, -1).map(({ key }) => tray.rests?.[key]).filter((rest) => rest && !rest.ended_at);
  return waits.sort((one, other) => millis(one.ready_at) - millis(other.ready_at)).at(-1) ?? null;
}

export function waits({ state }) {
  const rows = waiting(state, stillMatters);
  return rows.length ? html`<section><h2>${say("ui-waits")}</h2><ul class="rows">${rows.map((wait) => restRow(state, wait))}</ul></section>` : nothing;
}

// A wait that is over matters only while its pieces have a latest end before them.
function stillMatters(wait) {
  const { run, tray, step } = wait;
  const next = stepAfter(run, tray.id, step?.key);
  return !isReady(wait) || Boolean(next && (tray.at?.[next.key] ?? 0) > (tray.busy?.[next.key] ?? 0));
}

function restRow(state, wait) {
  const { run, rest, step, trays } = wait;
  const next = stepAfter(run, wait.tray.id, step?.key);
  const ready = isReady(wait);
  const line = html`<span>${waitWords(wait)}${next ? html`<br><span class="soft">${say("wait-then", { next: next.name })}</span>` : nothing}</span>
    <b>${rest.latest_at ? say(ready ? "wait-by" : "wait-between", { from: rest.ready_at, by: rest.latest_at }) : ready ? say("wait-ready") : say("wait-from", { from: rest.ready_at })}</b>`;
  const coat = timesLine(state, step, rest);
  const late = isLate(wait) ? "late" : "";
  if (!coat && (ready || !next)) return html`<li class="row ${late}">${line}</li>`;
  const early = () => open("early", { runId: run.id, trays, why: rest.why, until: rest.ready_at, step, next });
  return html`<li><details><summary class="row ${late}">${line}</summary>
    ${coat ? timesOf(state, step, rest) : nothing}
    ${ready || !next ? nothing : html`<div class="stack">${button(say(`early-open-${rest.why}`), early, "full")}
    <a class="button" href=${`/calendar?${new URLSearchParams({ run: run.id, tray: trays[0], step: step.key })}`}>${say("calendar-put")}</a></div>`}</details></li>`;
}
