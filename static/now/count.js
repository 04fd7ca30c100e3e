// Counting: good and scrap of each tray of a load, absolute.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { oneOf, stepper } from "./controls.js";
import { nextMove, openMoves } from "./doing.js";
import { stepOf } from "./names.js";
import { finishLoad, nextWords } from "./presses.js";
import { scrapReasons } from "./reasons.js";
import { closeSheet, openSheet, sheetHead } from "./sheet.js";
import { say } from "./words.js";

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
