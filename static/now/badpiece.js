// A bad piece: scrap with its reason, or rework as a tray of its own. The load goes on.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { oneOf, stepper } from "./controls.js";
import { inOrder, routeOf } from "./names.js";
import { about } from "./presses.js";
import { press } from "./press.js";
import { scrapReasons } from "./reasons.js";
import { closeSheet, openSheet, sheetHead } from "./sheet.js";
import { positionsOf } from "./positions.js";
import { say } from "./words.js";

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
