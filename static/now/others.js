// Something else instead, folded; and what holds work up for everybody.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { stoppedNotice } from "../views/below.js";
import { cautions } from "../views/cautions.js";
import { handsOf, isPutAside, openLoads, openMoves, watchedBy } from "../views/doing.js";
import { moveButton, moveWords, reason } from "./first.js";
import { openLoadSheet } from "../door/later.js";
import { jobOf, press } from "../door/press.js";
import { olderPlan, priceWords, tooLate, why } from "./prices.js";
import { closeSheet, openSheet, sheetHead } from "../views/sheet.js";
import { lateLines, unplanned } from "./unplanned.js";
import { list, loadTitle, personName, say, stationName, stepOf } from "../door/words.js";

export { why };

export function others(scene) {
  const { state, me } = scene;
  const moves = openMoves(state, me);
  const shown = handsOf(state, me) ? moves : moves.slice(1);
  const known = new Set(moves.map((move) => `${move.run}/${move.load}`));
  const aside = openLoads(state).filter((load) => isPutAside(load) && !known.has(`${load.run}/${load.id}`));
  const joined = openLoads(state).filter((load) => ["loading", "working", "unloading"].includes(load.state) && load.people?.length && !load.people.includes(me));
  const offered = new Set(moves.filter((move) => move.code === "job").map(jobOf));
  // Nobody is sent off while a machine wants their eyes.
  const jobs = watchedBy(state, me).length ? [] : Object.entries(state.jobs ?? {}).filter(([key]) => !offered.has(key));
  const plan = [lateLines(scene), tooLate(scene), olderPlan(scene), unplanned(scene)];
  if (!shown.length && !aside.length && !joined.length && !jobs.length) return plan;
  return html`${plan}<details><summary>${say("ui-others")}</summary><ul class="rows">
    ${shown.map((move) => moveRow(scene, move))}
    ${aside.map((load) => loadRow(state, load, say("others-aside", { station: stationName(state, load.station) })))}
    ${joined.map((load) => loadRow(state, load, atIt(state, load)))}
    ${jobs.map(([key, job]) => html`<li class="row"><span>${job.name}<br><span class="soft">${say("others-job", { minutes: Math.round(job.minutes ?? 0) })}</span></span>
      <button type="button" @click=${() => press(say("did-job", { job: job.name }), [{ kind: "job started", body: { job: key } }])}>${say("go-start")}</button></li>`)}
  </ul></details>`;
}

const loadRow = (state, load, words) => html`<li class="row"><span>${loadTitle(state.runs[load.run], load)}<br><span class="soft">${words}</span></span>
  <button type="button" @click=${() => openLoadSheet(load)}>${say("ui-open")}</button></li>`;

// Who is at it; two may be at one load.
function atIt(state, load) {
  const who = say("state-at-it", { person: list(load.people.map((key) => personName(state, key))), doing: say(`doing-${load.state}`) });
  return `${who} · ${stationName(state, load.station)}`;
}

// Whatever the press in the sheet opens or starts, the sheet it stood in is gone.
const closes = { handleEvent: ({ target }) => target.closest("button") && closeSheet(), capture: true };

function moveRow(scene, move) {
  const title = moveWords(scene.state, move);
  const step = stepOf(scene.state.runs?.[move.run], move.step, move.trays?.[0]);
  const look = () => openSheet(() => html`${sheetHead(title)}${cautions(step)}<p>${reason(move)}</p>${move.price ? html`<p>${priceWords(scene.state, move)}</p>` : nothing}<div @click=${closes}>${moveButton(scene, move)}</div>`);
  return html`<li class="row"><span>${title}<br><span class="soft">${[reason(move), stationName(scene.state, move.station), priceWords(scene.state, move)].filter(Boolean).join(" · ")}</span></span>
    ${["free", "watch"].includes(move.code) ? nothing : html`<button type="button" @click=${look}>${say("ui-open")}</button>`}</li>`;
}

export function stoppedOperations({ state, me, runs }) {
  const mine = handsOf(state, me);
  return runs.map((run) => html`
    ${Object.keys(run.stopped ?? {}).filter((key) => !(mine?.run === run && mine?.step?.key === key)).map((key) => {
      const step = stepOf(run, key);
      return step ? stoppedNotice({ run, step, load: { id: "", run: run.id, step: key, station: step.station } }) : nothing;
    })}
    ${Object.entries(run.out ?? {}).map(([supply, until]) => html`<p class="row"><span>${say(until ? "out-of-until" : "out-of", { supply, until: until ?? "" })}</span>
      <button type="button" @click=${() => press(say("did-in", { supply }), [{ kind: "supply in", run: run.id, body: { supply } }])}>${say("out-is-there")}</button></p>`)}`);
}
