// Pieces that change trays: split, merge, borrow, fill a jig from two. They stay at their step or go back.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { freshTray } from "../sheets/bad_piece.js";
import { positionsOf } from "../views/positions.js";
import { press } from "../door/press.js";
import { closeSheet, oneOf, openSheet, sheetHead, stepper } from "../views/sheet.js";
import { inOrder, routeOf, say, sum } from "../door/words.js";

const WHYS = ["split", "merge", "borrow", "fill", "rework", "other"];

export function openMove(runId, trayId) {
  const it = { from: null, to: null, pieces: 1, step: null, why: "split", positions: new Set() };
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const tray = run.trays[trayId];
    const steps = routeOf(run, trayId);
    const sources = steps.filter((step) => tray.at?.[step.key]);
    if (!sources.length) return html`${sheetHead(say("trays-move-title", { tray: trayId }))}<p>${say("trays-move-nothing")}</p>`;
    const from = sources.find((step) => step.key === it.from) ?? sources[0];
    const max = tray.at[from.key];
    const fresh = freshTray(run, trayId);
    const backTo = steps.slice(0, steps.indexOf(from) + 1);
    const step = backTo.find((one) => one.key === it.step) ?? from;
    const to = it.to ?? fresh;
    const pieces = it.positions.size || Math.min(it.pieces, max);
    const record = () => {
      closeSheet();
      const body = { to, pieces, to_operation: step.key, why: it.why, ...(it.positions.size ? { positions: [...it.positions] } : {}) };
      press(say("did-moved", { pieces, tray: trayId, to }), [{ kind: "pieces moved", run: runId, tray: trayId, operation: from.key, body }]);
    };
    return html`${sheetHead(say("trays-move-title", { tray: trayId }))}
      ${sources.length > 1 ? oneOf(say("trays-move-from"), sources.map((one) => [one.key, one.name]), from.key, (key) => { it.from = key; }) : nothing}
      ${positionsOf(tray, it.positions)}
      ${stepper(say("bad-how-many"), pieces, { min: 1, max, set: (count) => { it.pieces = count; } })}
      ${oneOf(say("trays-move-to"), targets(run, trayId, fresh), to, (key) => { it.to = key; if (key !== fresh && it.why === "split") it.why = "merge"; })}
      ${backTo.length > 1 ? html`<details><summary>${say("trays-move-step", { step: step.name })}</summary>
        ${oneOf(say("bad-back-to"), backTo.map((one) => [one.key, one.name]), step.key, (key) => { it.step = key; it.why = key === from.key ? it.why : "rework"; })}</details>` : nothing}
      ${oneOf(say("trays-move-why"), WHYS.map((key) => [key, say(`trays-why-${key}`)]), it.why, (key) => { it.why = key; })}
      <button type="button" class="go" @click=${record}>${say("trays-move-go", { pieces, to })}</button>`;
  });
}

const targets = (run, own, fresh) => [
  [fresh, say("trays-move-new", { tray: fresh })],
  ...inOrder(Object.keys(run.trays)).filter((id) => id !== own && (sum(run.trays[id].at) || run.trays[id].good)).map((id) => [id, id]),
];
