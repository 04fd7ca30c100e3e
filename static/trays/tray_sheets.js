// What one tray is opened for: its count corrected, pieces moved, its wood noted.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { press } from "../door/press.js";
import { inOrder, routeOf, say, sum } from "../door/words.js";
import { freshTray, reasonsOf } from "../sheets/bad_piece.js";
import { oneOf, textField, whyScrap } from "../views/controls.js";
import { scrapOf, stepsTo } from "../views/pieces.js";
import { positionsOf } from "../views/positions.js";
import { goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

/** Correcting a count: so many good and scrap of a tray at a step, absolute; it replaces what was counted. */
export function openCountTray(runId, trayId) {
  const it = { step: null, load: null, good: null, scrap: null, why: null };
  const pick = (step, load) => Object.assign(it, { step, load, good: null, scrap: null });
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const tray = run.trays[trayId];
    const steps = routeOf(run, trayId).filter((step) => tray.at?.[step.key] || tray.counts?.[step.key]);
    if (!steps.length) return html`${sheetHead(say("trays-count-title", { tray: trayId }))}<p>${say("trays-count-nothing")}</p>`;
    const step = steps.find((step) => step.key === it.step) ?? steps.findLast((step) => tray.counts?.[step.key]) ?? steps[0];
    const loads = loadsAt(run, tray, step.key);
    const load = it.load && loads.includes(it.load) ? it.load : loads[0];
    const [wasGood, wasScrap] = tray.counts?.[step.key]?.[load] ?? [0, 0];
    const good = it.good ?? wasGood;
    const scrap = it.scrap ?? wasScrap;
    const max = wasGood + wasScrap + (tray.at?.[step.key] ?? 0);
    const before = scrapOf(run, trayId, { step: step.key, id: load });
    const more = scrap > wasScrap;
    // A reason chosen anew is that of what is scrap beside what was; where that is nothing, it puts the old ones right.
    const said = it.why && !more ? before.map((reason) => ({ ...reason, why: it.why })) : before;
    const why = it.why ?? (more ? "" : before[0]?.why ?? "");
    const counted = { kind: "pieces counted", run: runId, tray: trayId, operation: step.key, ...(load ? { load } : {}), body: { good, scrap: reasonsOf(said, scrap, why) } };
    return html`${sheetHead(say("trays-count-title", { tray: trayId }))}
      ${oneOf(say("trays-move-step", { step: step.name }), steps.map((step) => [step.key, step.name]), step.key, (key) => pick(key, null))}
      ${loads.length > 1 ? oneOf(say("wrong-which"), loads.map((id) => [id, id]), load, (id) => pick(step.key, id)) : nothing}
      ${stepper(say("ui-good"), good, { max: max - scrap, set: (count) => { it.good = count; } })}
      ${stepper(say("ui-scrap"), scrap, { max, set: (count) => { it.scrap = count; it.good = Math.min(good, max - count); } })}
      ${scrap ? whyScrap(why, (words) => { it.why = words; }) : nothing}
      ${scrap && !why ? goButton(say("bad-why-first"), () => {}, true) : goButton(say("trays-count-go", { good, scrap }), () => press(say("did-counted", { tray: trayId, good }), [counted]))}`;
  });
}

// The loads that counted this tray here, and the one that holds it now.
function loadsAt(run, tray, key) {
  const counted = Object.keys(tray.counts?.[key] ?? {});
  const begun = Object.values(run.loads ?? {}).filter((load) => load.step === key && load.pieces?.[tray.id] && !["done", "off"].includes(load.state)).map((load) => load.id);
  return [...new Set([...begun, ...counted])];
}

const WHYS = ["split", "merge", "borrow", "fill", "rework", "other"];

/** Pieces that change trays: split, merge, borrow, fill a jig from two. They stay at their step or go back. */
export function openMove(runId, trayId) {
  const it = { from: null, to: null, pieces: 1, step: null, why: "split", positions: new Set() };
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const tray = run.trays[trayId];
    const sources = routeOf(run, trayId).filter((step) => tray.at?.[step.key]);
    if (!sources.length) return html`${sheetHead(say("trays-move-title", { tray: trayId }))}<p>${say("trays-move-nothing")}</p>`;
    const from = sources.find((step) => step.key === it.from) ?? sources[0];
    const max = tray.at[from.key];
    const fresh = freshTray(run, trayId);
    const backTo = stepsTo(run, trayId, from.key);
    const step = backTo.find((step) => step.key === it.step) ?? from;
    const to = it.to ?? fresh;
    const pieces = it.positions.size || Math.min(it.pieces, max);
    const record = () => {
      const body = { to, pieces, to_operation: step.key, why: it.why, ...(it.positions.size ? { positions: [...it.positions] } : {}) };
      press(say("did-moved", { pieces, tray: trayId, to }), [{ kind: "pieces moved", run: runId, tray: trayId, operation: from.key, body }]);
    };
    return html`${sheetHead(say("trays-move-title", { tray: trayId }))}
      ${sources.length > 1 ? oneOf(say("trays-move-from"), sources.map((source) => [source.key, source.name]), from.key, (key) => { it.from = key; }) : nothing}
      ${positionsOf(tray, it.positions)}
      ${it.positions.size ? nothing : stepper(say("bad-how-many"), pieces, { min: 1, max, set: (count) => { it.pieces = count; } })}
      ${oneOf(say("trays-move-to"), targets(run, trayId, fresh), to, (key) => { it.to = key; if (key !== fresh && it.why === "split") it.why = "merge"; })}
      ${backTo.length > 1 ? html`<details><summary>${say("trays-move-step", { step: step.name })}</summary>
        ${oneOf(say("bad-back-to"), backTo.map((step) => [step.key, step.name]), step.key, (key) => { it.step = key; it.why = key === from.key ? it.why : "rework"; })}</details>` : nothing}
      ${oneOf(say("trays-move-why"), WHYS.map((key) => [key, say(`trays-why-${key}`)]), it.why, (key) => { it.why = key; })}
      ${goButton(say("trays-move-go", { pieces, to }), record)}`;
  });
}

const targets = (run, own, fresh) => [
  [fresh, say("trays-move-new", { tray: fresh })],
  ...inOrder(Object.keys(run.trays)).filter((id) => id !== own && (sum(run.trays[id].at) || run.trays[id].good)).map((id) => [id, id]),
];

/** The wood and the board of a tray. */
export function openWood(runId, tray) {
  const it = { wood: tray.wood ?? "", board: tray.board ?? "" };
  const record = () => press(say("did-wood", { tray: tray.id, wood: it.wood }), [{ kind: "wood noted", run: runId, tray: tray.id, body: { ...it } }]);
  openSheet(() => html`${sheetHead(say("trays-wood"))}
    ${textField(say("trays-wood-wood"), it.wood, (text) => { it.wood = text; })}
    ${textField(say("trays-wood-board"), it.board, (text) => { it.board = text; })}
    ${goButton(say("ui-ok"), record)}`);
}
