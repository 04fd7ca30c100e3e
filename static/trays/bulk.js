// 'Trays 4 to 6 done to 120': several trays entered at once, as assumed.

import { html } from "../vendor/lit-html-3.3.3.js";
import { toggle } from "../views/operation.js";
import { press } from "../door/press.js";
import { closeSheet, oneOf, openSheet, redraw, sheetHead } from "../views/sheet.js";
import { inOrder, routeOf, say, sum, trayWords } from "../door/words.js";

export function openBulk({ run: { id: runId } }) {
  const chosen = new Set();
  let step = null;
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const ids = inOrder(Object.keys(run.trays)).filter((id) => sum(run.trays[id].at));
    const steps = routeOf(run);
    const to = steps.find((one) => one.key === step);
    const picked = ids.filter((id) => chosen.has(id) && to && toCount(run, run.trays[id], to));
    const record = () => {
      closeSheet();
      press(say("did-filled", { trays: trayWords(picked), step: to.name }), picked.map((id) => ({
        kind: "pieces counted", run: runId, tray: id, operation: to.key, basis: "assumed", body: toCount(run, run.trays[id], to),
      })));
    };
    return html`${sheetHead(say("trays-bulk-title"))}
      <p class="ask">${say("trays-bulk-which")}</p><div class="choices" role="group" aria-label=${say("trays-bulk-which")}>
        ${ids.map((id) => html`<button type="button" aria-pressed=${String(chosen.has(id))} @click=${() => { toggle(chosen, id); redraw(); }}>${id}</button>`)}</div>
      ${oneOf(say("trays-bulk-to"), steps.map((one) => [one.key, one.name]), step, (key) => { step = key; })}
      <p class="hint">${say("trays-bulk-about")}</p>
      <button type="button" class="go" ?disabled=${!picked.length} @click=${record}>
        ${picked.length ? say("trays-bulk-go", { trays: trayWords(picked), step: to.name }) : say("trays-bulk-title")}</button>`;
  });
}

/** The absolute count that brings every piece before the end of `to` past it; null where none is left to bring. */
function toCount(run, tray, to) {
  const steps = routeOf(run, tray.id);
  const index = steps.findIndex((step) => step.key === to.key);
  const held = (tray.holds ?? []).reduce((total, hold) => total + (steps.findIndex((step) => step.key === hold.step) <= index ? hold.pieces : 0), 0);
  const behind = steps.slice(0, index + 1).reduce((total, step) => total + (tray.at?.[step.key] ?? 0), 0) - held;
  if (behind <= 0) return null;
  const own = tray.counts?.[to.key]?.[`${to.key}/${tray.id}`] ?? [0, 0];
  const scrap = (tray.scrap?.[to.key] ?? []).filter((one) => one.load === `${to.key}/${tray.id}`).map(({ load: _, ...one }) => one);
  return { good: own[0] + behind, scrap };
}
