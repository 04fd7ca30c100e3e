// A bad piece (scrap with its reason, or rework as a tray of its own), and counting each tray of a load, absolute.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { nextMove, openMoves } from "../views/doing.js";
import { positionsOf } from "../views/positions.js";
import { about, finishLoad, nextWords, press } from "../door/press.js";
import { scrapReasons } from "../views/reasons.js";
import { closeSheet, oneOf, openSheet, sheetHead, stepper } from "../views/sheet.js";
import { inOrder, routeOf, say, stepOf } from "../door/words.js";

export function openBadPiece({ load, step }) {
  const trays = inOrder(Object.keys(load.pieces));
  const it = { tray: trays[0], pieces: 1, what: "scrap", why: "", back: "", positions: new Set() };
  openSheet((scene) => {
    const run = scene.state.runs[load.run];
    const max = Math.max(1, run.trays[it.tray]?.busy?.[load.step] ?? load.pieces[it.tray]);
    const earlier = earlierSteps(run, it.tray, load.step);
    const whys = scrapReasons().map(([, words]) => [words, words]);
    it.why ||= whys[0][0];
    if (it.positions.size) it.pieces = it.positions.size;
    const record = () => { closeSheet(); (it.what === "scrap" ? scrapIt : reworkIt)(run, load, step, it); };
    return html`${sheetHead(say("bad-title", { step: step.name }))}
      ${trays.length > 1 ? oneOf(say("bad-which"), trays.map((tray) => [tray, say("ui-tray", { tray })]), it.tray, (tray) => { it.tray = tray; it.pieces = 1; it.positions.clear(); }) : nothing}
      ${positionsOf(run.trays[it.tray], it.positions)}
      ${stepper(say("bad-how-many"), it.pieces, { min: 1, max, set: (pieces) => { it.pieces = pieces; } })}
      ${oneOf(say("bad-what"), [["scrap", say("ui-scrap")], ["rework", say("ui-rework")]], it.what, (what) => { it.what = what; it.back ||= earlier.at(-1)?.key ?? step.key; })}
      ${it.what === "scrap" ? oneOf(say("ui-why"), whys, it.why, (why) => { it.why = why; })
        : oneOf(say("bad-back-to"), [...earlier, step].map((one) => [one.key, one.name]), it.back, (back) => { it.back = back; })}
      <button type="button" class="go" @click=${record}>${say(it.what === "scrap" ? "bad-scrap" : "bad-rework", { pieces: it.pieces, tray: it.tray, why: it.why })}</button>
      <p class="hint">${say("bad-goes-on")}</p>`;
  });
}

export function earlierSteps(run, tray, key) {
  const steps = routeOf(run, tray);
  return steps.slice(0, Math.max(0, steps.findIndex((step) => step.key === key)));
}

// The count is absolute: what was counted of this load before is said again.
function scrapIt(run, load, step, { tray, pieces, why, positions }) {
  const good = run.trays[tray]?.counts?.[load.step]?.[load.id]?.[0] ?? 0;
  const before = (run.trays[tray]?.scrap?.[load.step] ?? []).filter((one) => one.load === load.id).map(({ load: _, ...one }) => one);
  const fresh = { pieces, why, ...(positions.size ? { positions: [...positions] } : {}) };
  press(say("did-scrap", { pieces, tray, step: step.name }), [{ kind: "pieces counted", ...about(load), tray, body: { good, scrap: [...before, fresh] } }]);
}

function reworkIt(run, load, step, { tray, pieces, back, positions }) {
  const to = freshTray(run, tray);
  const body = { to, pieces, to_operation: back, why: "rework", cause_operation: step.key, ...(positions.size ? { positions: [...positions] } : {}) };
  press(say("did-rework", { pieces, tray, to }), [{ kind: "pieces moved", ...about(load), tray, body }]);
}

/** The next free tray name beside a tray: 4a, 4b, … */
export function freshTray(run, tray) {
  const number = String(tray).replace(/[a-z]+$/, "");
  const letter = [..."abcdefghijklmnopqrstuvwxyz"].find((one) => !run.trays[number + one]);
  return number + (letter ?? `z${Date.now() % 1000}`);
}

/** Opens the count of a load; what is neither good nor scrap stays at the step. */
export function openCount(load) {
  const run = (scene) => scene.state.runs[load.run];
  let counts = null;
  const begin = (scene) => Object.fromEntries(Object.entries(load.pieces).map(([tray, pieces]) => {
    const scrap = run(scene).trays[tray]?.counts?.[load.step]?.[load.id]?.[1] ?? 0;
    return [tray, { pieces, good: pieces - scrap, scrap, why: scrapReasons()[0][1] }];
  }));
  openSheet((scene) => {
    counts ??= begin(scene);
    const next = nextMove(openMoves(scene.state, scene.me));
    const finish = (then) => () => { closeSheet(); finishLoad(run(scene), load, then, { counts: body(counts) }); };
    const good = total(counts, "good");
    const scrap = total(counts, "scrap");
    const words = scrap ? say("done-some", { good, scrap }) : say("done-all", { good });
    return html`${sheetHead(say("count-title", { step: stepOf(run(scene), load.step)?.name ?? load.step }))}
      ${Object.keys(counts).map((tray) => trayCount(tray, counts[tray]))}
      ${left(counts) ? html`<p class="notice">${say("count-left", { pieces: left(counts) })}</p>` : nothing}
      <button type="button" class="go" @click=${finish(null)}>${words}</button>
      ${next ? html`<button type="button" class="full spaced" @click=${finish(next)}>${words}. ${nextWords(load, next)}</button>` : nothing}`;
  });
}

function trayCount(tray, count) {
  return html`<fieldset><legend>${say("ui-tray", { tray })}</legend>
    ${stepper(say("ui-good"), count.good, { max: count.pieces - count.scrap, set: (good) => { count.good = good; } })}
    ${stepper(say("ui-scrap"), count.scrap, { max: count.pieces, set: (scrap) => { count.good = Math.min(count.good, count.pieces - scrap); count.scrap = scrap; } })}
    ${count.scrap ? oneOf(say("ui-why"), scrapReasons().map(([, words]) => [words, words]), count.why, (why) => { count.why = why; }) : nothing}
  </fieldset>`;
}

const total = (counts, what) => Object.values(counts).reduce((sum, count) => sum + count[what], 0);
const left = (counts) => total(counts, "pieces") - total(counts, "good") - total(counts, "scrap");
const body = (counts) => Object.fromEntries(Object.entries(counts).map(([tray, { good, scrap, why }]) => [tray, { good, scrap: scrap ? [{ pieces: scrap, why }] : [] }]));
