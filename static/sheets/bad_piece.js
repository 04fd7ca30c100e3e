// A bad piece (scrap with its reason, or rework as a tray of its own), and counting each tray of a load, absolute.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { about, finishLoad, nextWords, press } from "../door/press.js";
import { inOrder, say, stepOf } from "../door/words.js";
import { oneOf, whyScrap } from "../views/controls.js";
import { nextMove, openMoves } from "../views/moves.js";
import { countedOf, scrapOf, stepsTo } from "../views/pieces.js";
import { positionsOf } from "../views/positions.js";
import { button, closing, goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

export function openBadPiece({ load, step }) {
  const trays = inOrder(Object.keys(load.pieces));
  const it = { tray: trays[0], pieces: 1, what: "scrap", why: "", back: "", positions: new Set() };
  openSheet((scene) => {
    const run = scene.state.runs[load.run];
    const max = Math.max(1, run.trays[it.tray]?.busy?.[load.step] ?? load.pieces[it.tray]);
    const backTo = stepsTo(run, it.tray, load.step);
    if (it.positions.size) it.pieces = it.positions.size;
    const isScrap = it.what === "scrap";
    return html`${sheetHead(say("bad-title", { step: step.name }))}
      ${trays.length > 1 ? oneOf(say("bad-which"), trays.map((tray) => [tray, say("ui-tray", { tray })]), it.tray, (tray) => { it.tray = tray; it.pieces = 1; it.positions.clear(); }) : nothing}
      ${positionsOf(run.trays[it.tray], it.positions)}
      ${it.positions.size ? nothing : stepper(say("bad-how-many"), it.pieces, { min: 1, max, set: (pieces) => { it.pieces = pieces; } })}
      ${oneOf(say("bad-what"), [["scrap", say("ui-scrap")], ["rework", say("ui-rework")]], it.what, (what) => { it.what = what; it.back ||= backTo.at(-2)?.key ?? step.key; })}
      ${isScrap ? whyScrap(it.why, (why) => { it.why = why; }) : oneOf(say("bad-back-to"), backTo.map((step) => [step.key, step.name]), it.back, (back) => { it.back = back; })}
      <p class="hint">${say("bad-goes-on")} <a href="/trays">${say("bad-other-tray")}</a></p>
      ${isScrap && !it.why ? goButton(say("bad-why-first"), () => {}, true)
        : goButton(say(`bad-${it.what}${trays.length > 1 ? "-tray" : ""}`, { pieces: it.pieces, tray: it.tray, why: it.why }), () => (isScrap ? scrapIt : reworkIt)(run, load, step, it))}`;
  });
}

const placesOf = ({ positions }) => (positions.size ? { positions: [...positions] } : {});

// The count is absolute: what was counted of this load before is said again.
function scrapIt(run, load, step, it) {
  const { tray, pieces, why } = it;
  const body = { good: countedOf(run, tray, load)[0], scrap: [...scrapOf(run, tray, load), { pieces, why, ...placesOf(it) }] };
  press(say("did-scrap", { pieces, tray, step: step.name }), [{ kind: "pieces counted", ...about(load), tray, body }]);
}

function reworkIt(run, load, step, it) {
  const { tray, pieces, back } = it;
  const to = freshTray(run, tray);
  const body = { to, pieces, to_operation: back, why: "rework", cause_operation: step.key, ...placesOf(it) };
  press(say("did-rework", { pieces, tray, to }), [{ kind: "pieces moved", ...about(load), tray, body }]);
}

/** The next free tray name beside a tray: 4a, 4b, … */
export function freshTray(run, tray) {
  const number = String(tray).replace(/[a-z]+$/, "");
  const letter = [..."abcdefghijklmnopqrstuvwxyz"].find((letter) => !run.trays[number + letter]);
  return number + (letter ?? `z${Date.now() % 1000}`);
}

/** Opens the count of a load; what is neither good nor scrap stays at the step. */
export function openCount(load) {
  let counts = null;
  openSheet((scene) => {
    const run = scene.state.runs[load.run];
    counts ??= begun(run, load);
    const next = nextMove(openMoves(scene.state, scene.me));
    const finish = (then) => () => finishLoad(run, load, then, { counts: said(counts) });
    const [good, scrap] = [total(counts, "good"), total(counts, "scrap")];
    const left = total(counts, "pieces") - good - scrap;
    const words = scrap ? say("done-some", { good, scrap }) : say("done-all", { good });
    return html`${sheetHead(say("count-title", { step: stepOf(run, load.step)?.name ?? load.step }))}
      ${Object.keys(counts).map((tray) => trayCount(tray, counts[tray]))}
      ${left ? html`<p class="notice">${say("count-left", { pieces: left })}</p>` : nothing}
      ${unsaid(counts) ? goButton(say("bad-why-first"), () => {}, true) : goButton(words, finish(null))}${next && !unsaid(counts) ? button(`${words}. ${nextWords(load, next)}`, closing(finish(next)), "full spaced") : nothing}`;
  });
}

// Scrap that was counted before keeps its reasons; what is counted now wants one.
const begun = (run, load) => Object.fromEntries(Object.entries(load.pieces).map(([tray, pieces]) => {
  const [, scrap] = countedOf(run, tray, load);
  return [tray, { pieces, good: pieces - scrap, scrap, before: scrapOf(run, tray, load), why: "" }];
}));

const trayCount = (tray, count) => html`<fieldset><legend>${say("ui-tray", { tray })}</legend>
    ${stepper(say("ui-good"), count.good, { max: count.pieces - count.scrap, set: (good) => { count.good = good; } })}
    ${stepper(say("ui-scrap"), count.scrap, { max: count.pieces, set: (scrap) => { count.good = Math.min(count.good, count.pieces - scrap); count.scrap = scrap; } })}
    ${anew(count) > 0 ? whyScrap(count.why, (why) => { count.why = why; }) : nothing}</fieldset>`;

const sum = (reasons) => reasons.reduce((all, { pieces }) => all + pieces, 0);
const anew = ({ scrap, before }) => scrap - sum(before);
const unsaid = (counts) => Object.values(counts).some((count) => anew(count) > 0 && !count.why);
const total = (counts, what) => Object.values(counts).reduce((all, count) => all + count[what], 0);
const said = (counts) => Object.fromEntries(Object.entries(counts).map(([tray, { good, scrap, before, why }]) => [tray, { good, scrap: reasonsOf(before, scrap, why) }]));

/** The reasons of so many scrap: those said `before`, and `why` for what is scrap anew. Of fewer the last ones go first. */
export function reasonsOf(before, scrap, why) {
  let left = scrap;
  const kept = before.flatMap((reason) => {
    const pieces = Math.min(left, reason.pieces);
    left -= pieces;
    return pieces ? [{ ...reason, pieces, ...(reason.positions ? { positions: reason.positions.slice(0, pieces) } : {}) }] : [];
  });
  return left ? [...kept, { pieces: left, why }] : kept;
}
