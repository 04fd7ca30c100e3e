// One tray, whole: number, strip, where its pieces are, texts, and what can be done with it.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "../door/clock.js";
import { openEndWait } from "../sheets/early.js";
import { curing, timesOf } from "../views/finish.js";
import { openHold } from "../sheets/out_of.js";
import { textsOf } from "../views/positions.js";
import { press } from "../door/press.js";
import { countWords, nextWords, strip } from "../views/tray_list.js";
import { routeOf, say, stationName, stepOf, sum } from "../door/words.js";
import { openCountTray } from "./counting.js";
import { fetchHistory, history } from "./history.js";
import { openMove } from "./moving.js";
import { openWood } from "./wood.js";

export function wholeTray(scene, tray) {
  const { state, run } = scene;
  const empty = !sum(tray.at) && !tray.good;
  return html`<article class="tray-whole" id=${`tray-${tray.id}`}>
    <header><h2 aria-label=${say("ui-tray", { tray: tray.id })}>${tray.id}</h2>${strip(run, tray)}</header>
    <p><b>${empty ? say("trays-empty") : nextWords(state, run, tray)}</b>
      <span class="soft"> ${[tray.of ? say("trays-of", { of: tray.of }) : "", countWords(tray), tray.wood, tray.board ? say("ui-board", { board: tray.board.split("/").pop() }) : ""].filter(Boolean).join(" · ")}</span></p>
    ${empty ? nothing : where(state, run, tray)}
    ${curing(state, run, tray).map(({ step, rest }) => html`<p class="curing">${step.name}: ${timesOf(state, step, rest)}</p>`)}
    ${textsOf(tray)}
    <details @toggle=${(event) => event.target.open && fetchHistory(run.id, tray.id)}><summary>${say("trays-do")}</summary>
      ${actions(scene, tray)}<h3>${say("trays-history")}</h3>${history(run, tray)}</details>
  </article>`;
}

function where(state, run, tray) {
  const rows = routeOf(run, tray.id).filter((step) => tray.at?.[step.key]).map((step) => {
    const on = Object.values(run.loads ?? {}).find((load) => load.step === step.key && load.pieces?.[tray.id] && !["done", "off"].includes(load.state));
    return say(on ? "trays-on" : "trays-at", { pieces: tray.at[step.key], step: step.name, station: on ? stationName(state, on.station) : "" });
  });
  if (tray.good) rows.push(say("trays-good", { good: tray.good }));
  const scrap = Object.entries(tray.scrap ?? {}).flatMap(([key, reasons]) => reasons.map((one) => say("trays-scrap", { pieces: one.pieces, why: one.why, step: stepOf(run, key, tray.id)?.name ?? key })));
  return rows.length > 1 || scrap.length ? html`<ul>${[...rows, ...scrap].map((words) => html`<li>${words}</li>`)}</ul>` : nothing;
}

function actions(scene, tray) {
  const { run } = scene;
  const note = (words, kind, step, body = {}) => press(words, [{ kind, run: run.id, tray: tray.id, operation: step, body }]);
  const resting = Object.entries(tray.rests ?? {}).filter(([, rest]) => !rest.ended_at && millis(rest.ready_at) > now());
  const name = (key) => stepOf(run, key, tray.id)?.name ?? key;
  return html`<div class="stack">
    <button type="button" @click=${() => openMove(run.id, tray.id)}>${say("trays-move")}</button>
    <button type="button" @click=${() => openCountTray(run.id, tray.id)}>${say("trays-count")}</button>
    <button type="button" @click=${() => openHold(scene, { runId: run.id, tray: tray.id })}>${say("trays-hold")}</button>
    ${(tray.holds ?? []).map((hold) => html`<button type="button" @click=${() => note(say("did-released", { tray: tray.id }), "pieces released", hold.step)}>${say("trays-release", { step: name(hold.step) })}</button>`)}
    ${resting.map(([key]) => html`<button type="button" @click=${() => openEndWait(run.id, tray.id, key)}>${say("trays-wait-end", { step: name(key) })}</button>`)}
    <button type="button" @click=${() => openWood(run.id, tray)}>${say("trays-wood")}</button>
    <a class="button" href=${`/plan/runs/${run.id}/cards?tray=${encodeURIComponent(tray.id)}`}>${say("trays-card")}</a>
    <a class="button" href=${`/plan/runs/${run.id}/trays/${encodeURIComponent(tray.id)}/paper`}>${say("trays-paper")}</a></div>`;
}
