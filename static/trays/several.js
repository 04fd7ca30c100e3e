// Several trays at once: counted past a step, or given to a person.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { press } from "../door/press.js";
import { inOrder, routeOf, say, sum, trayWords } from "../door/words.js";
import { anyOf, oneOf, tick } from "../views/controls.js";
import { countedOf, piecesTo, scrapOf, stepsTo } from "../views/pieces.js";
import { goButton, openSheet, sheetHead } from "../views/sheet.js";

/** 'Trays 4 to 6 done to 120': several trays entered at once, as assumed. */
export function openBulk({ run: { id: runId } }) {
  const chosen = new Set();
  let step = null;
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const ids = inOrder(Object.keys(run.trays)).filter((id) => sum(run.trays[id].at));
    const steps = routeOf(run);
    const to = steps.find((each) => each.key === step);
    const picked = ids.filter((id) => chosen.has(id) && to && toCount(run, run.trays[id], to));
    const record = () => press(say("did-filled", { trays: trayWords(picked), step: to.name }), picked.map((id) => ({
      kind: "pieces counted", run: runId, tray: id, operation: to.key, basis: "assumed", body: toCount(run, run.trays[id], to),
    })));
    return html`${sheetHead(say("trays-bulk-title"))}
      ${anyOf(say("trays-bulk-which"), ids.map((id) => [id, id]), chosen)}
      ${oneOf(say("trays-bulk-to"), steps.map((step) => [step.key, step.name]), step, (key) => { step = key; })}
      <p class="hint">${say("trays-bulk-about")}</p>
      ${goButton(picked.length ? say("trays-bulk-go", { trays: trayWords(picked), step: to.name }) : say("trays-bulk-title"), record, !picked.length)}`;
  });
}

/** The absolute count that brings every piece before the end of `to` past it; null where none is left to bring. */
function toCount(run, tray, to) {
  const passed = stepsTo(run, tray.id, to.key).map((step) => step.key);
  const held = (tray.holds ?? []).filter((hold) => passed.includes(hold.step)).reduce((total, hold) => total + hold.pieces, 0);
  const behind = piecesTo(run, tray.id, to.key) - held;
  const own = { step: to.key, id: `${to.key}/${tray.id}` };
  return behind > 0 ? { good: countedOf(run, tray.id, own)[0] + behind, scrap: scrapOf(run, tray.id, own) } : null;
}

/** 'Assign to …': the lead gives an operation on chosen trays to a person, and may ask to see the first piece. Trays come
 *  first, then what all of them still have; of one `tray` what comes next there is chosen already. */
export function openGive({ run: { id: runId } }, tray = null) {
  const next = tray && Object.keys(tray.at ?? {}).filter((key) => tray.at[key])[0];
  const it = { step: next ?? "", to: null, look: false, trays: new Set(tray ? [tray.id] : []) };
  openSheet(({ state }) => {
    const run = state.runs[runId];
    const open = routeOf(run).filter(({ key }) => traysBefore(run, key).length);
    if (!open.length) return html`${sheetHead(say("give-title"))}<p>${say("give-nothing")}</p>`;
    const ids = traysBefore(run, tray ? it.step : open.at(-1).key);
    const trays = ids.filter((id) => it.trays.has(id));
    const steps = tray ? open : open.filter(({ key }) => trays.every((id) => piecesTo(run, id, key)));
    const step = steps.find((step) => step.key === it.step) ?? steps[0] ?? open[0];
    const people = Object.entries(state.people ?? {}).filter(([, person]) => !person.removed);
    const facts = { person: it.to ? state.people[it.to]?.name ?? "" : "…", step: step.name, trays: trayWords(trays) };
    const given = { kind: "operation given", run: runId, operation: step.key, body: { to: it.to, trays, look: Boolean(it.to && it.look) } };
    const operations = oneOf(say("give-operation"), steps.map((step) => [step.key, step.name]), step.key, (key) => { it.step = key; if (tray) it.trays.clear(); });
    const which = anyOf(say("give-which"), ids.map((id) => [id, id]), it.trays);
    const words = !trays.length ? "give-trays-first" : it.to === null ? "give-who-first" : it.to ? "give-go" : "give-back";
    return html`${sheetHead(say("give-title"))}
      ${tray ? [operations, which] : [which, trays.length ? operations : nothing]}
      ${oneOf(say("give-to"), [...people.map(([key, person]) => [key, person.name]), ["", say("give-nobody")]], it.to, (key) => { it.to = key; })}
      ${tick(say("give-look"), Boolean(it.to && it.look), () => { it.look = !it.look; }, !it.to)}
      ${goButton(say(words, facts), () => press(say(it.to ? "did-give" : "did-give-back", facts), [given]), !trays.length || it.to === null)}`;
  });
}

// The trays that have pieces at a step or before it.
const traysBefore = (run, key) => inOrder(Object.keys(run.trays)).filter((id) => piecesTo(run, id, key));
