// Correcting a count: so many good and scrap of a tray at a step, absolute; it replaces what was counted.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { press } from "../door/press.js";
import { scrapReasons } from "../views/reasons.js";
import { closeSheet, oneOf, openSheet, sheetHead, stepper } from "../views/sheet.js";
import { routeOf, say } from "../door/words.js";

export function openCountTray(runId, trayId) {
  const it = { step: null, load: null, good: null, scrap: null, why: null };
  const pick = (step, load) => Object.assign(it, { step, load, good: null, scrap: null });
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const tray = run.trays[trayId];
    const steps = routeOf(run, trayId).filter((step) => tray.at?.[step.key] || tray.counts?.[step.key]);
    if (!steps.length) return html`${sheetHead(say("trays-count-title", { tray: trayId }))}<p>${say("trays-count-nothing")}</p>`;
    const step = steps.find((one) => one.key === it.step) ?? steps.findLast((one) => tray.counts?.[one.key]) ?? steps[0];
    const loads = loadsAt(run, tray, step.key);
    const load = it.load && loads.includes(it.load) ? it.load : loads[0];
    const [wasGood, wasScrap] = tray.counts?.[step.key]?.[load] ?? [0, 0];
    const good = it.good ?? wasGood;
    const scrap = it.scrap ?? wasScrap;
    const max = wasGood + wasScrap + (tray.at?.[step.key] ?? 0);
    const kept = (tray.scrap?.[step.key] ?? []).find((one) => one.load === load)?.why;
    const why = it.why ?? kept ?? scrapReasons()[0][1];
    const record = () => {
      closeSheet();
      press(say("did-counted", { tray: trayId, good }), [{
        kind: "pieces counted", run: runId, tray: trayId, operation: step.key, ...(load ? { load } : {}),
        body: { good, scrap: scrap ? [{ pieces: scrap, why }] : [] },
      }]);
    };
    return html`${sheetHead(say("trays-count-title", { tray: trayId }))}
      ${oneOf(say("trays-move-step", { step: step.name }), steps.map((one) => [one.key, one.name]), step.key, (key) => pick(key, null))}
      ${loads.length > 1 ? oneOf(say("wrong-which"), loads.map((id) => [id, id]), load, (id) => pick(step.key, id)) : nothing}
      ${stepper(say("ui-good"), good, { max: max - scrap, set: (count) => { it.good = count; } })}
      ${stepper(say("ui-scrap"), scrap, { max, set: (count) => { it.scrap = count; it.good = Math.min(good, max - count); } })}
      ${scrap ? oneOf(say("ui-why"), scrapReasons().map(([, words]) => [words, words]), why, (words) => { it.why = words; }) : nothing}
      <button type="button" class="go" @click=${record}>${say("trays-count-go", { good, scrap })}</button>`;
  });
}

// The loads that counted this tray here, and the one that holds it now.
function loadsAt(run, tray, key) {
  const counted = Object.keys(tray.counts?.[key] ?? {});
  const begun = Object.values(run.loads ?? {}).filter((load) => load.step === key && load.pieces?.[tray.id] && !["done", "off"].includes(load.state)).map((load) => load.id);
  return [...new Set([...begun, ...counted])];
}
