// What rings, on top: the sentence, one big button, and the other answers. An answer stops it on every page.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { minutesTo, span } from "../door/clock.js";
import { open } from "../door/later.js";
import { answer, isoIn, press, sayTime, startUnloading } from "../door/press.js";
import { personName, roomName, say, sayCode, slug, stationName, stepOf } from "../door/words.js";
import { alertsFor, callOf, isDanger, isMissed, isWatch, loadAt } from "../views/doing.js";
import { stepAfter } from "../views/pieces.js";
import { button } from "../views/sheet.js";
import { isSoft } from "./alarm.js";
import { again, callAnswers, callFacts, looksEnded, openCalls, saidAnswers, saidWords, stationBack, stillRunning, waitOver, watchAnswers } from "./answers.js";
import { reminderPanel, reminderText, reminderTitle } from "./reminders.js";

// What wants somebody at a machine takes the whole screen, but not while hands are at a cutter.
const WHOLE = ["machine end", "looks ended", "watch check", "nobody near"];

export function alerts(scene) {
  const due = each(alertsFor(scene)).filter((alert) => !isHold(alert));
  const soft = isSoft(scene.state, scene.me);
  return html`<div role="alert" aria-live="assertive">
    ${due.map((alert, index) => html`<section class="panel ${isRed(alert, scene.state) ? "red" : "act"} ${!soft && index === 0 && WHOLE.includes(kindOf(alert)) ? "whole" : ""}">
      ${isCare(alert) ? reminderTitle(scene.state, alert.id) : html`<p class="alert-title">${titleOf(scene.state, alert)}</p>`}
      ${soft ? html`<p><b>${say("alert-soft")}</b></p>` : nothing}
      ${alert.late ? html`<p>${say("alert-late")}</p>` : nothing}
      ${answers(scene, alert)}</section>`)}
  </div>${openCalls(scene)}`;
}

const isHold = (due) => kindOf(due) === "hold over";

/** Holds that are over, below the work: what they hang on, and both answers alike. Nothing of it stands where 'Done' does. */
export const holdsOver = (scene) => alertsFor(scene).filter(isHold).map((due) => html`<section class="panel look hold-over"><p><b>${titleOf(scene.state, due)}</b></p>
    <p>${holdWords(scene.state, due)}</p><div class="pair">
    ${button(say("alert-release"), () => press(say("did-released", { tray: due.tray }), [{ kind: "pieces released", run: due.run, tray: due.tray, operation: due.step }, answer(due, "done")]))}
    ${button(say("alert-tomorrow"), () => press(say("did-kept-held", { tray: due.tray }), [answer(due, "seen", { ask_again_at: isoIn(24 * 60) })]))}</div></section>`);

function holdWords(state, due) {
  const held = (state.runs?.[due.run]?.trays?.[due.tray]?.holds ?? []).filter((hold) => hold.step === due.step);
  return held.map((hold) => [say("held-why", { pieces: hold.pieces, why: hold.why }), hold.waiting_for].filter(Boolean).join(": ")).join(" · ");
}

/** One question a machine: that everybody was last seen elsewhere says more than that a look is due. */
export const each = (all) =>
  all.filter((due) => due.kind !== "watch check" || !all.some((other) => other.kind === "nobody near" && other.run === due.run && other.load === due.load && other.said === due.said));

const isCare = (due) => due.kind.startsWith("care ");
const isRed = (due, state) => isDanger(due, state) || due.id.startsWith("care end|smoulder");

/** 'The laser has ended · 2 min ago' */
export const titleOf = (state, due) => `${wordsOf(state, due)} · ${agoWords(due)}`;

const saidOf = (state, due) => Object.values(state.said_running ?? {}).find((said) => due.said && said.said === due.said);

function wordsOf(state, due) {
  const said = saidOf(state, due);
  if (said) return saidWords(state, said);
  const load = loadAt(state, [due.run, due.load]);
  const call = callOf(state, due);
  const facts = {
    station: stationName(state, due.station), kind: state.stations?.[due.station]?.kind ?? "", tray: due.tray ?? "", step: stepOf(state.runs?.[due.run], due.step, due.tray)?.name ?? "",
    next: due.tray ? stepAfter(state.runs?.[due.run], due.tray, due.step)?.name ?? "" : "", person: due.person ? personName(state, due.person) : "",
    room: roomName(state, state.stations?.[due.station]?.room), supply: due.kind === "supply due" ? due.id.split("|")[2] : "",
    ...(call ? callFacts(state, call) : {}),
  };
  if (isCare(due)) return reminderText(state, due.id);
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
    return html`${button(say("go-at-it"), () => startUnloading(load, [due]), "go")}
      <details><summary>${say("alert-not-ended")}</summary>${stillRunning(reply, button(say("alert-stopped"), () => open("stopped", load)))}</details>`;
  }
  if (due.kind === "session end") {
    return html`${button(say("go-stop"), () => open("lock-up"), "go")}
      <div class="pair">${[15, 30].map((minutes) => button(say("alert-more-time", { minutes }), () => sayTime(isoIn(minutes))))}</div>`;
  }
  if (due.kind === "wait over") return waitOver(scene.state, due, reply);
  if (kindOf(due) === "station back") return stationBack(scene.state, due);
  return html`${button(say("alert-seen"), reply("seen"), "go")}${again((body) => reply("seen", body))}`;
}
