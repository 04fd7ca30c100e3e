// The first thing on Now: what I am in the middle of, or what I could do now; one sentence, one big button.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { handsOf, loadAt, loadScene, nextMove, openMoves, ringing, wantsList } from "./doing.js";
import { cautions, details, firstPieceNotice } from "./details.js";
import { lateDone, lateRunning, lateStart } from "./late.js";
import { loadTitle, loadWords, roomName, stationName, stepOf } from "./names.js";
import { doneWords, finishLoad, jobOf, loadOf, nextWords, startLoad, startUnloading } from "./presses.js";
import { press } from "./press.js";
import { backFromAway } from "./away.js";
import { runButton } from "./running.js";
import { openLockUp } from "./session.js";
import { openStartList } from "./startlist.js";
import { openCount } from "./count.js";
import { say, sayCode } from "./words.js";

export function first(scene) {
  const person = scene.state.people?.[scene.me];
  if (person?.away) return backFromAway(scene, person);
  const hands = handsOf(scene.state, scene.me);
  const moves = openMoves(scene.state, scene.me);
  if (hands?.job) return doingJob(scene, hands.job, moves);
  if (hands) return doingLoad(scene, hands, moves);
  return couldDo(scene, moves[0]);
}

const since = (iso) => (iso ? html`<p class="since">${say("first-since", { since: iso })}</p>` : nothing);

const where = (state, station) => {
  const one = state.stations?.[station];
  return one ? [one.name, roomName(state, one.room)].filter(Boolean).join(", ") : "";
};

function doingJob({ state, me }, job, moves) {
  const next = nextMove(moves);
  const done = { kind: "job done", body: { job: job.key } };
  return html`<section class="now">${since(state.people[me].hands_since)}<h1>${job.name}</h1>
    <button type="button" class="go" @click=${() => press(say("did-job-done", { job: job.name }), [done])}>${say("go-job-done")}</button>
    ${next ? html`<p class="soft">${say("first-after", { what: titleOf(state, next) })}</p>` : nothing}</section>`;
}

function doingLoad(scene, here, moves) {
  const { state, me } = scene;
  const { run, load, step, station } = here;
  return html`<section class="now">
    ${since(state.people[me].hands_since)}
    <h1>${say(`first-${load.state}`, { step: step?.name ?? load.step, what: loadWords(run, load) })}</h1>
    <p class="where">${where(state, load.station)}${step?.attendance === "watched" ? html`. <b>${say("attendance-watched")}</b>` : nothing}</p>
    ${cautions(step)}${firstPieceNotice(here)}
    ${load.state === "loading" ? runButton(here) : wantsList({ ...here, station }) ? listButton(here) : doneButton(scene, here, moves)}
    ${load.state === "loading" ? lateRunning(here) : lateDone(run, load)}
    ${details(here)}
  </section>`;
}

const listButton = (here) => html`<button type="button" class="go" @click=${() => openStartList(here)}>${say("go-list", { points: here.step.checklist.length })}</button>`;

function doneButton({ state }, { run, load }, moves) {
  const next = nextMove(moves);
  const alerts = next ? ringing(state).filter((due) => due.load === next.load && due.run === next.run) : [];
  return html`<button type="button" class="go" @click=${() => finishLoad(run, load, next, { alerts })}>
      ${doneWords(run, load)}${next ? `. ${nextWords(load, next)}` : ""}</button>
    <div class="pair">${next ? html`<button type="button" @click=${() => finishLoad(run, load)}>${say("go-only-done")}</button>` : nothing}
    <button type="button" @click=${() => openCount(load)}>${say("go-count")}</button></div>`;
}

/** 'Sand 120, tray 4' for a move. */
export function titleOf(state, move) {
  if (move.code === "job") return state.jobs?.[jobOf(move)]?.name ?? "";
  const run = state.runs?.[move.run];
  if (!run || !move.load) return moveWords(state, move);
  return loadTitle(run, loadOf(move));
}

/** The sentence of a move. */
export function moveWords(state, move) {
  const facts = moveFacts(state, move);
  const id = `move-${move.code.replaceAll(" ", "-")}`;
  return say(move.code === "free" && facts.until ? `${id}-until` : id, facts);
}

/** The facts that a move's sentence may use. */
function moveFacts(state, move) {
  const run = state.runs?.[move.run];
  return {
    until: "", ...move.facts,
    step: stepOf(run, move.step, move.trays?.[0])?.name ?? "", what: run && move.load ? loadWords(run, move) : "",
    station: stationName(state, move.station), room: roomName(state, move.room), minutes: Math.round(move.minutes ?? 0),
    job: move.code === "job" ? state.jobs?.[jobOf(move)]?.name ?? "" : "", run: run?.name ?? "",
  };
}

export const reason = (move) => sayCode("because", move.because?.code, move.because?.facts);

function couldDo(scene, move) {
  const { state } = scene;
  if (!move) return html`<section class="now"><h1>${say("first-nothing")}</h1><p>${say(Object.keys(state.runs ?? {}).length ? "first-nothing-more" : "first-no-run")}</p>
    ${Object.keys(state.runs ?? {}).length ? nothing : html`<a class="button go" href="/plan">${say("go-plan")}</a>`}</section>`;
  const step = stepOf(state.runs?.[move.run], move.step, move.trays?.[0]);
  const why = reason(move);
  return html`<section class="now">
    ${why ? html`<p class="since">${why}</p>` : nothing}
    <h1>${moveWords(state, move)}</h1>
    ${move.station ? html`<p class="where">${where(state, move.station)}${step?.attendance === "watched" ? html`. <b>${say("attendance-watched")}</b>` : nothing}</p>` : nothing}
    ${cautions(step)}
    ${moveButton(scene, move)}
    ${["start", "wipe"].includes(move.code) ? html`${lateStart(loadOf(move))}` : nothing}
    ${step ? details({ run: state.runs[move.run], load: loadAt(state, [move.run, move.load]) ?? loadOf(move), step, station: state.stations?.[move.station] }) : nothing}
  </section>`;
}

/** The big button of a move. */
export function moveButton(scene, move) {
  const { state } = scene;
  const go = (words, action) => html`<button type="button" class="go" @click=${action}>${words}</button>`;
  const load = loadAt(state, [move.run, move.load]);
  if (["start", "wipe"].includes(move.code)) return go(say("go-start"), () => startLoad(loadOf(move)));
  if (move.code === "go on") return go(say("go-go-on"), () => startLoad(load));
  if (move.code === "run") return runButton(loadScene(state, load));
  if (move.code === "unload") return go(say("go-at-it"), () => startUnloading(load, ringing(state).filter((due) => due.load === load.id && due.run === load.run)));
  if (move.code === "finish") return go(doneWords(state.runs[move.run], load), () => finishLoad(state.runs[move.run], load));
  if (move.code === "job") {
    const job = jobOf(move);
    return go(say("go-start"), () => press(say("did-job", { job: state.jobs?.[job]?.name ?? "" }), [{ kind: "job started", body: { job } }]));
  }
  if (move.code === "stop") return go(say("go-stop"), () => openLockUp());
  return nothing;
}

