// Going on before a wait is over: says what that means, then begins the next operation, noted as early.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { press, startLoad } from "../door/press.js";
import { inOrder, loadTitle, say, stepOf } from "../door/words.js";
import { cautions } from "../views/cautions.js";
import { timesOf } from "../views/finish.js";
import { button, closing, goButton, openSheet, sheetHead } from "../views/sheet.js";

/** Offers the next operation of each of these trays, whose wait `why` after `step` is not over. */
export function openEarly({ runId, trays, why, until, step, next }) {
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const loads = inOrder(trays).map((tray) => loadFor(run, tray, next)).filter(Boolean);
    return html`${sheetHead(say("early-title", { until }))}
      <p class="cautions">${say(`early-${why}`)}</p>${finishTimes(state, run, trays, step)}${cautions(next)}
      ${loads.length ? html`<div class="stack">${loads.map((load) => button(say("early-go", { load: loadTitle(run, load) }), closing(() => startLoad(load, { body: { early: true } }))))}</div>` : html`<p>${say("early-nothing")}</p>`}`;
  });
}

/** Ends a wait before its time without going on yet: asked about, and noted as early. */
export function openEndWait(runId, trayId, key) {
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const step = stepOf(run, key, trayId);
    const rest = run.trays[trayId].rests?.[key];
    const ended = { kind: "wait ended", run: runId, tray: trayId, operation: key, body: { early: true } };
    return html`${sheetHead(say("wait-end-title", { step: step?.name ?? key }))}<p>${say("early-title", { until: rest?.ready_at ?? "" })}</p>
      <p class="cautions">${say(`early-${rest?.why ?? "settle"}`)}</p>${finishTimes(state, run, [trayId], step)}
      ${goButton(say("wait-end-go", { tray: trayId }), () => press(say("did-wait-ended", { tray: trayId }), [ended]))}`;
  });
}

// What the finish's label says of when; the tray that was coated last counts.
function finishTimes(state, run, trays, step) {
  const rests = trays.map((id) => run.trays[id]?.rests?.[step?.key]).filter(Boolean).sort((one, other) => Date.parse(other.began_at) - Date.parse(one.began_at));
  return rests.length ? html`<p>${timesOf(state, step, rests[0])}</p>` : nothing;
}

/** The load that a tray's free pieces would make at a step; null where none are free. */
function loadFor(run, tray, step) {
  const found = run.trays[tray];
  const held = (found.holds ?? []).filter((hold) => hold.step === step.key).reduce((sum, hold) => sum + hold.pieces, 0);
  const free = (found.at?.[step.key] ?? 0) - (found.busy?.[step.key] ?? 0) - held;
  const pieces = Math.min(free, step.load_pieces ?? free);
  return pieces > 0 ? { id: freshLoad(run, tray, step), run: run.id, step: step.key, station: step.station, pieces: { [tray]: pieces } } : null;
}

/** The id that the server would give: the plain one, or with .2, .3 once that is begun. */
function freshLoad(run, tray, step) {
  const base = `${step.key}/${tray}`;
  const used = { ...run.loads, ...run.boards, ...run.trays[tray].counts?.[step.key] };
  let id = base;
  for (let number = 2; id in used; number += 1) id = `${base}.${number}`;
  return id;
}
