// Something else instead, folded; and what holds work up for everybody.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { stoppedNotice } from "./below.js";
import { handsOf, isPutAside, openLoads, openMoves, watchedBy } from "./doing.js";
import { moveButton, moveWords, reason } from "./first.js";
import { openLoadSheet } from "./later.js";
import { cautions } from "./operation.js";
import { jobOf, press } from "./press.js";
import { openSheet, sheetHead } from "./sheet.js";
import { loadTitle, say, stationName, stepOf } from "./words.js";

export function others(scene) {
  const { state, me } = scene;
  const moves = openMoves(state, me);
  const shown = handsOf(state, me) ? moves : moves.slice(1);
  const known = new Set(moves.map((move) => `${move.run}/${move.load}`));
  const aside = openLoads(state).filter((load) => isPutAside(load) && !known.has(`${load.run}/${load.id}`));
  const offered = new Set(moves.filter((move) => move.code === "job").map(jobOf));
  // Nobody is sent off while a machine wants their eyes.
  const jobs = watchedBy(state, me).length ? [] : Object.entries(state.jobs ?? {}).filter(([key]) => !offered.has(key));
  if (!shown.length && !aside.length && !jobs.length) return nothing;
  return html`<details><summary>${say("ui-others")}</summary><ul class="rows">
    ${shown.map((move) => moveRow(scene, move))}
    ${aside.map((load) => html`<li class="row"><span>${loadTitle(state.runs[load.run], load)}<br><span class="soft">${say("others-aside", { station: stationName(state, load.station) })}</span></span>
      <button type="button" @click=${() => openLoadSheet(load)}>${say("ui-open")}</button></li>`)}
    ${jobs.map(([key, job]) => html`<li class="row"><span>${job.name}<br><span class="soft">${say("others-job", { minutes: Math.round(job.minutes ?? 0) })}</span></span>
      <button type="button" @click=${() => press(say("did-job", { job: job.name }), [{ kind: "job started", body: { job: key } }])}>${say("go-start")}</button></li>`)}
  </ul></details>`;
}

function moveRow(scene, move) {
  const title = moveWords(scene.state, move);
  const step = stepOf(scene.state.runs?.[move.run], move.step, move.trays?.[0]);
  const look = () => openSheet(() => html`${sheetHead(title)}${cautions(step)}<p>${reason(move)}</p>${moveButton(scene, move)}`);
  return html`<li class="row"><span>${title}<br><span class="soft">${[reason(move), stationName(scene.state, move.station)].filter(Boolean).join(" · ")}</span></span>
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
