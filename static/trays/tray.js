// One tray, whole: number, strip, where its pieces are, texts, what can be done with it, and what happened to it.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, moment, now } from "../door/clock.js";
import { fetchHistory, historyOf } from "../door/history.js";
import { press } from "../door/press.js";
import { personName, routeOf, say, sayCode, slug, stationName, stepOf, sum } from "../door/words.js";
import { openEndWait } from "../sheets/early.js";
import { openHold } from "../sheets/out_of.js";
import { isLead } from "../views/doing.js";
import { curing, timesLine, timesOf } from "../views/finish.js";
import { loadWith } from "../views/pieces.js";
import { textsOf } from "../views/positions.js";
import { button } from "../views/sheet.js";
import { countWords, nextWords, strip } from "../views/tray_list.js";
import { openGive } from "./several.js";
import { openCountTray, openMove, openWood } from "./tray_sheets.js";

export function wholeTray(scene, tray) {
  const { state, run } = scene;
  const empty = !sum(tray.at) && !tray.good;
  return html`<article class="tray-whole" id=${`tray-${tray.id}`}>
    <header><h2 aria-label=${say("ui-tray", { tray: tray.id })}>${tray.id}</h2>${strip(run, tray)}${isLead(state, scene.me) ? html`<a class="button" href=${`/plan/runs/${run.id}/trays/${encodeURIComponent(tray.id)}/code`} aria-label=${say("trays-code", { tray: tray.id })}>${say("trays-code-short")}</a>` : nothing}</header>
    <p><b>${empty ? say("trays-empty") : nextWords(state, run, tray)}</b>
      <span class="soft"> ${[tray.of ? say("trays-of", { of: tray.of }) : "", countWords(tray), tray.wood, tray.board ? say("ui-board", { board: tray.board.split("/").pop() }) : ""].filter(Boolean).join(" · ")}</span></p>
    ${empty ? nothing : where(state, run, tray)}
    ${curing(state, run, tray).map(({ step, rest }) => html`<details class="curing"><summary>${timesLine(state, step, rest)}</summary>${timesOf(state, step, rest)}</details>`)}
    ${textsOf(tray)}
    <details @toggle=${(event) => event.target.open && fetchHistory(run.id, tray.id)}><summary>${say("trays-do")}</summary>
      ${actions(scene, tray)}<h3>${say("trays-history")}</h3>${history(state, run, historyOf(run.id, tray.id))}</details>
  </article>`;
}

function where(state, run, tray) {
  const rows = routeOf(run, tray.id).filter((step) => tray.at?.[step.key]).map((step) => {
    const on = loadWith(run, tray.id, step.key);
    return say(on ? "trays-on" : "trays-at", { pieces: tray.at[step.key], step: step.name, station: on ? stationName(state, on.station) : "" });
  });
  if (tray.good) rows.push(say("trays-good", { good: tray.good }));
  const scrap = Object.entries(tray.scrap ?? {}).flatMap(([key, reasons]) => reasons.map((reason) => say("trays-scrap", { pieces: reason.pieces, why: reason.why, step: stepOf(run, key, tray.id)?.name ?? key })));
  return rows.length > 1 || scrap.length ? html`<ul>${[...rows, ...scrap].map((words) => html`<li>${words}</li>`)}</ul>` : nothing;
}

function actions(scene, tray) {
  const { run } = scene;
  const release = (step) => press(say("did-released", { tray: tray.id }), [{ kind: "pieces released", run: run.id, tray: tray.id, operation: step }]);
  const resting = Object.entries(tray.rests ?? {}).filter(([, rest]) => !rest.ended_at && millis(rest.ready_at) > now());
  const name = (key) => stepOf(run, key, tray.id)?.name ?? key;
  const lead = isLead(scene.state, scene.me);
  return html`<div class="stack">
    ${lead && sum(tray.at) ? button(say("give-open"), () => openGive(scene, tray)) : nothing}
    ${button(say("trays-move"), () => openMove(run.id, tray.id))}
    ${button(say("trays-count"), () => openCountTray(run.id, tray.id))}
    ${button(say("trays-hold"), () => openHold(scene, { runId: run.id, tray: tray.id }))}
    ${(tray.holds ?? []).map((hold) => button(say("trays-release", { step: name(hold.step) }), () => release(hold.step)))}
    ${resting.map(([key]) => button(say("trays-wait-end", { step: name(key) }), () => openEndWait(run.id, tray.id, key)))}
    ${button(say("trays-wood"), () => openWood(run.id, tray))}
    <a class="button" href=${`/plan/runs/${run.id}/cards?tray=${encodeURIComponent(tray.id)}`}>${say("trays-card")}</a>
    <a class="button" href=${`/plan/runs/${run.id}/trays/${encodeURIComponent(tray.id)}/paper`}>${say("trays-paper")}</a></div>`;
}

function history(state, run, found) {
  if (found === undefined) return nothing;
  if (found === null) return html`<p class="notice">${say("trays-history-offline")}</p>`;
  if (found.refused) return html`<p class="notice">${say("trays-history-refused", { code: found.refused })}</p>`;
  if (!found.length) return html`<p>${say("trays-history-none")}</p>`;
  return html`<ol class="history">${found.map((entry) => html`<li><span class="soft">${moment(entry.at)}</span><span><span class=${entry.undone ? "undone" : ""}>${didWords(state, run, entry)}</span>
    ${marks(entry).map((mark) => html` <span class="soft">(${mark})</span>`)}</span></li>`)}</ol>`;
}

const marks = (entry) => [entry.undone ? say("trays-history-undone") : "", ["tapped", undefined].includes(entry.basis) ? "" : sayCode("basis", entry.basis)].filter(Boolean);

/** Who did what at which step, and what was counted, moved or noted with it. */
function didWords(state, run, entry) {
  const facts = entry.facts ?? {};
  const who = facts.who ?? (entry.person ? personName(state, entry.person) : "");
  const step = stepOf(run, facts.step)?.name ?? facts.step;
  const did = [who, sayCode("kind", entry.kind) || slug(entry.kind)].filter(Boolean).join(" ");
  return [[did, step].filter(Boolean).join(": "), ...noted(facts)].join(", ");
}

function noted(facts) {
  const found = [];
  if (facts.good !== undefined) found.push(say("count-good", { good: facts.good }));
  else if (facts.pieces) found.push(say("count-pieces", { pieces: facts.pieces }));
  if (facts.scrap) found.push(say("count-scrap", { scrap: facts.scrap }));
  if (facts.to) found.push(say("history-to", { from: facts.from, to: facts.to, step: facts.to_step ?? "" }));
  if (facts.result) found.push(say(`history-${facts.result}`));
  for (const name of ["supply", "why", "waiting_for", "wood", "board", "note"]) if (facts[name]) found.push(facts[name]);
  if (facts.until) found.push(say("session-until", { until: facts.until }));
  if (facts.to_settle) found.push(say("settle-title").toLowerCase());
  return found;
}
