// What rings, on top: the sentence, one big button, and the other answers. An answer stops it on every page.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { isSoft } from "./alarm.js";
import { callAnswers, callFacts, openCalls } from "./calling.js";
import { minutesTo, span } from "../door/clock.js";
import { alertsFor, callOf, isDanger, isMissed, isWatch, loadAt, ringing } from "../views/doing.js";
import { openLockUp, openStopped } from "../door/later.js";
import { about, answer, isoIn, press, startUnloading } from "../door/press.js";
import { reminderPanel, reminderText, reminderTitle } from "./reminders.js";
import { saidAnswers, saidWords } from "./said.js";
import { sayTime } from "../now/session.js";
import { easyDays } from "../views/sheet.js";
import { watchAnswers } from "./watching.js";
import { personName, roomName, routeOf, say, sayCode, slug, stationName, stepOf, trayWords } from "../door/words.js";

const AGAIN = [5, 10, 20];
// What wants somebody at a machine takes the whole screen, but not while hands are at a cutter.
const WHOLE = ["machine end", "looks ended", "watch check", "nobody near"];

export function alerts(scene) {
  const due = each(alertsFor(scene)).filter((one) => !isHold(one));
  const soft = isSoft(scene.state, scene.me);
  return html`<div role="alert" aria-live="assertive">
    ${due.map((one, index) => html`<section class="panel ${isRed(one, scene.state) ? "red" : "act"} ${!soft && index === 0 && WHOLE.includes(kindOf(one)) ? "whole" : ""}">
      ${isCare(one) ? reminderTitle(one) : html`<p class="alert-title">${titleOf(scene.state, one)}</p>`}
      ${soft ? html`<p><b>${say("alert-soft")}</b></p>` : nothing}
      ${one.late ? html`<p>${say("alert-late")}</p>` : nothing}
      ${answers(scene, one)}</section>`)}
  </div>${openCalls(scene)}`;
}

const isHold = (due) => kindOf(due) === "hold over";

/** Holds that are over, below the work: what they hang on, and both answers alike. Nothing of it stands where 'Done' does. */
export const holdsOver = (scene) => alertsFor(scene).filter(isHold).map((due) => html`<section class="panel look hold-over"><p><b>${titleOf(scene.state, due)}</b></p>
    <p>${holdWords(scene.state, due)}</p><div class="pair">
    <button type="button" @click=${() => press(say("did-released", { tray: due.tray }), [{ kind: "pieces released", run: due.run, tray: due.tray, operation: due.step }, answer(due, "done")])}>${say("alert-release")}</button>
    <button type="button" @click=${() => press(say("did-kept-held", { tray: due.tray }), [answer(due, "seen", { ask_again_at: isoIn(24 * 60) })])}>${say("alert-tomorrow")}</button></div></section>`);

function holdWords(state, due) {
  const held = (state.runs?.[due.run]?.trays?.[due.tray]?.holds ?? []).filter((one) => one.step === due.step);
  return held.map((one) => [say("held-why", { pieces: one.pieces, why: one.why }), one.waiting_for].filter(Boolean).join(": ")).join(" · ");
}

/** One question a machine: that everybody was last seen elsewhere says more than that a look is due. */
export const each = (all) =>
  all.filter((due) => due.kind !== "watch check" || !all.some((one) => one.kind === "nobody near" && one.run === due.run && one.load === due.load && one.said === due.said));

const isCare = (due) => due.kind.startsWith("care ");
const isRed = (due, state) => isDanger(due, state) || due.id.startsWith("care end|smoulder");

/** 'The laser has ended · 2 min ago' */
export const titleOf = (state, due) => `${wordsOf(state, due)} · ${agoWords(due)}`;

const saidOf = (state, due) => Object.values(state.said_running ?? {}).find((one) => due.said && one.said === due.said);

function wordsOf(state, due) {
  const said = saidOf(state, due);
  if (said) return saidWords(state, said);
  const load = loadAt(state, [due.run, due.load]);
  const call = callOf(state, due);
  const facts = {
    station: stationName(state, due.station), kind: state.stations?.[due.station]?.kind ?? "", tray: due.tray ?? "", step: stepOf(state.runs?.[due.run], due.step, due.tray)?.name ?? "",
    next: afterStep(state, due), person: due.person ? personName(state, due.person) : "",
    room: roomName(state, state.stations?.[due.station]?.room), supply: due.kind === "supply due" ? due.id.split("|")[2] : "",
    ...(call ? callFacts(state, call) : {}),
  };
  if (isCare(due)) return reminderText(due.id);
  if (call) return say(call.why === "hurt" ? "alert-hurt" : "alert-call", facts);
  if (due.kind === "watch check" && isMissed(due)) return say("alert-watch-missed", facts);
  return load?.state === "ended" ? say("alert-needs-unloading", facts) : sayCode("alert", kindOf(due), facts) || slug(kindOf(due));
}

// An alert that asks again is said by the kind that it asks about.
const kindOf = (due) => (due.kind === "ask again" ? due.id.split("|")[1] : due.kind);

function agoWords(due) {
  const minutes = Math.floor(-minutesTo(due.due_at));
  return minutes < 1 ? say("ui-now") : say("ui-ago", { span: span(minutes) });
}

function afterStep(state, due) {
  const steps = due.tray ? routeOf(state.runs?.[due.run], due.tray) : [];
  return steps[steps.findIndex((step) => step.key === due.step) + 1]?.name ?? "";
}

function answers(scene, due) {
  const load = loadAt(scene.state, [due.run, due.load]);
  const reply = (what, body) => () => press(say("did-answered", { alert: wordsOf(scene.state, due) }), [answer(due, what, body)]);
  const said = saidOf(scene.state, due);
  if (said) return saidAnswers(scene, due, said);
  if (isCare(due)) return reminderPanel(scene, due);
  if (callOf(scene.state, due)) return callAnswers(scene, due);
  if (isWatch(due) && load) return watchAnswers(scene, due, load);
  if (load?.state === "running" && kindOf(due) === "looks ended") return looksEnded(scene, due, load, reply);
  if (load && ["running", "ended"].includes(load.state)) {
    return html`<button type="button" class="go" @click=${() => startUnloading(load, [due])}>${say("go-at-it")}</button>
      <details><summary>${say("alert-not-ended")}</summary><p class="ask">${say("alert-still-running")}</p>
      <div class="choices">${AGAIN.map((minutes) => html`<button type="button" @click=${() => reply("still running", { ask_again_at: isoIn(minutes) })()}>${say("alert-again-in", { minutes })}</button>`)}
      <button type="button" @click=${() => openStopped(load)}>${say("alert-stopped")}</button></div></details>`;
  }
  if (due.kind === "session end") {
    return html`<button type="button" class="go" @click=${() => openLockUp()}>${say("go-stop")}</button>
      <div class="pair">${[15, 30].map((minutes) => html`<button type="button" @click=${() => sayTime(isoIn(minutes))}>${say("alert-more-time", { minutes })}</button>`)}</div>`;
  }
  if (due.kind === "wait over") return waitOver(scene.state, due, reply);
  if (kindOf(due) === "station back") return stationBack(scene.state, due);
  return html`<button type="button" class="go" @click=${reply("seen")}>${say("alert-seen")}</button>
    <div class="choices spaced">${AGAIN.map((minutes) => html`<button type="button" @click=${reply("seen", { ask_again_at: isoIn(minutes) })}>${say("alert-again-in", { minutes })}</button>`)}</div>`;
}

// Somebody felt it: dry, or not yet, and then neither are the trays beside it that had the same coat.
function waitOver(state, due, reply) {
  const run = state.runs?.[due.run];
  const rest = run?.trays?.[due.tray]?.rests?.[due.step];
  const beside = ringing(state).filter((one) => one.kind === "wait over" && one.id !== due.id && one.run === due.run && one.step === due.step);
  const trays = beside.map((one) => one.tray);
  const until = (at) => press(say("did-not-dry", { trays: trayWords([due.tray, ...trays]), until: at }), [due, ...beside].map((one) => answer(one, "still running", { ask_again_at: at })));
  return html`${trays.length ? html`<p>${say("wait-beside", { trays: trayWords(trays) })}</p>` : nothing}
    <button type="button" class="go" @click=${reply("seen")}>${say("alert-seen")}</button>
    ${["dry", "cure"].includes(rest?.why) ? html`<p class="ask">${say("wait-not-dry")}</p><div class="pair">
      <button type="button" @click=${() => until(isoIn(12 * 60))}>${say("wait-12-h")}</button>
      <button type="button" @click=${() => until(isoIn(24 * 60))}>${say("wait-tomorrow")}</button></div>` : nothing}`;
}

// What was out of use until now: Now offers it, and the plan counts on it, once somebody says that it is back.
function stationBack(state, due) {
  const { name, out } = state.stations?.[due.station] ?? {};
  const body = out?.why ? { why: out.why } : {};
  const notYet = (until) => () => press(say("did-out-of-use", { station: name }), [{ kind: "station out of use", station: due.station, body: { ...body, ...(until ? { until } : {}) } }]);
  return html`${out?.why ? html`<p>${out.why}</p>` : nothing}
    <button type="button" class="go" @click=${() => press(say("did-back-in-use", { station: name }), [{ kind: "station back in use", station: due.station }])}>${say("machines-back")}</button>
    <p class="ask">${say("station-not-back")}</p>
    <div class="choices">${easyDays().map(([until, words]) => html`<button type="button" @click=${notYet(until)}>${words}</button>`)}</div>`;
}

// A sensor asks; only what a person answers changes the load.
function looksEnded({ state }, due, load, reply) {
  const at = state.stations?.[due.station]?.signal?.at ?? due.due_at;
  const left = () => press(say("did-ended", { station: stationName(state, due.station) }), [{ kind: "machine ended", ...about(load) }, answer(due, "ended")]);
  return html`<p>${say("alert-looks-ended-about", { at })}</p>
    <button type="button" class="go" @click=${() => startUnloading(load, [due])}>${say("go-at-it")}</button>
    <div class="pair"><button type="button" @click=${left}>${say("alert-looks-ended-left")}</button>
    <button type="button" @click=${() => openStopped(load)}>${say("alert-stopped")}</button></div>
    <p class="ask">${say("alert-still-running")}</p>
    <div class="choices">${AGAIN.map((minutes) => html`<button type="button" @click=${reply("still running", { ask_again_at: isoIn(minutes) })}>${say("alert-again-in", { minutes })}</button>`)}</div>`;
}
