// What rings, on top: the most urgent as one panel with its answers, others as rows to press. An answer stops it on every page.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { moment } from "../door/clock.js";
import { open } from "../door/later.js";
import { answer, isoIn, press, sayTime, startUnloading } from "../door/press.js";
import { redraw } from "../door/screen.js";
import { personName, roomName, say, sayCode, slug, stationName, stepOf } from "../door/words.js";
import { alertsFor, callOf, isDanger, isMissed, isWatch, loadAt } from "../views/doing.js";
import { stepAfter } from "../views/pieces.js";
import { button } from "../views/sheet.js";
import { isSoft } from "./alarm.js";
import { again, callAnswers, callFacts, looksEnded, openCalls, saidAnswers, saidWords, stationBack, stillRunning, waitOver, watchAnswers } from "./answers.js";
import { reminderPanel, reminderText, reminderTitle } from "./reminders.js";

// What somebody has to go to, and finishes the pass first while hands are at a cutter.
const GOES = ["machine end", "looks ended", "watch check", "nobody near", "call"];
// Of the rows below the panel the one whose answers are open.
let opened = "";

export function alerts(scene) {
  const [first, ...others] = inOrder(scene);
  return html`<div role="alert" aria-live="assertive">${first ? panel(scene, first) : nothing}${others.filter((due) => isDanger(due, scene.state)).map((due) => alertRow(scene, due))}</div>${openCalls(scene)}`;
}

/** What else rings and is no danger. */
export const more = (scene) => html`<div role="alert">${inOrder(scene).slice(1).filter((due) => !isDanger(due, scene.state)).map((due) => alertRow(scene, due))}</div>`;

const inOrder = (scene) =>
  each(alertsFor(scene)).filter((due) => !isHold(due)).sort((one, other) => urgency(scene.state, other) - urgency(scene.state, one));

/** Danger before a machine that is to be looked at, that before all else. */
export const urgency = (state, due) => 2 * isDanger(due, state) + isWatch(due);

const panel = (scene, due) => html`<section class="panel ${isRed(due, scene.state) ? "red" : "act"}">
  ${isCare(due) ? reminderTitle(scene.state, due.id) : html`<p class="alert-title">${titleOf(scene.state, due)}</p>`}${answered(scene, due)}</section>`;

function alertRow(scene, due) {
  const isOpen = opened === due.id;
  const turn = () => { opened = isOpen ? "" : due.id; redraw(); };
  return html`<button type="button" class="alert-row ${isRed(due, scene.state) ? "red" : ""}" aria-expanded=${String(isOpen)} @click=${turn}>${titleOf(scene.state, due)}</button>
    ${isOpen ? html`<section class="asked">${answered(scene, due)}</section>` : nothing}`;
}

/** Since when, what comes first where hands are at a cutter, and its answers. */
const answered = (scene, due) => html`<p class="due">${dueWords(due)}${due.late ? html` · ${say("alert-late")}` : nothing}</p>
  ${isSoft(scene.state, scene.me) && GOES.includes(kindOf(due)) ? html`<p><b>${say("alert-soft")}</b></p>` : nothing}${answers(scene, due)}`;

/** 'due 13:14'; what has been so for a while, and a call: 'since 13:14'. */
export const dueWords = (due) => say(["nobody near", "call"].includes(due.kind) ? "alert-since" : "alert-due", { at: moment(due.due_at) });

const isHold = (due) => kindOf(due) === "hold over";

/** Holds that are over, below the work: what they hang on, and both answers alike. Nothing of it stands where 'Done' does. */
export const holdsOver = (scene) => alertsFor(scene).filter(isHold).map((due) => html`<section class="panel look hold-over"><p><b>${titleOf(scene.state, due)}</b></p>
    <p class="due">${say("count-pieces", { pieces: held(scene.state, due).reduce((all, hold) => all + hold.pieces, 0) })}</p><div class="pair">
    ${button(say("alert-release"), () => press(say("did-released", { tray: due.tray }), [{ kind: "pieces released", run: due.run, tray: due.tray, operation: due.step }, answer(due, "done")]))}
    ${button(say("alert-tomorrow"), () => press(say("did-kept-held", { tray: due.tray }), [answer(due, "seen", { ask_again_at: isoIn(24 * 60) })]))}</div></section>`);

const held = (state, due) => (state.runs?.[due.run]?.trays?.[due.tray]?.holds ?? []).filter((hold) => hold.step === due.step);

/** One question a machine: that everybody was last seen elsewhere says more than that a look is due. */
export const each = (all) =>
  all.filter((due) => due.kind !== "watch check" || !all.some((other) => other.kind === "nobody near" && other.run === due.run && other.load === due.load && other.said === due.said));

const isCare = (due) => due.kind.startsWith("care ");
const isRed = (due, state) => isDanger(due, state) || due.id.startsWith("care end|smoulder");

const saidOf = (state, due) => Object.values(state.said_running ?? {}).find((said) => due.said && said.said === due.said);

/** 'CNC should be finished. Go and check' */
export function titleOf(state, due) {
  const said = saidOf(state, due);
  if (said) return saidWords(state, said);
  const load = loadAt(state, [due.run, due.load]);
  const call = callOf(state, due);
  const facts = {
    station: stationName(state, due.station), tray: due.tray ?? "", step: stepOf(state.runs?.[due.run], due.step, due.tray)?.name ?? "",
    next: due.tray ? stepAfter(state.runs?.[due.run], due.tray, due.step)?.name ?? "" : "", person: due.person ? personName(state, due.person) : "",
    room: roomName(state, state.stations?.[due.station]?.room), supply: due.kind === "supply due" ? due.id.split("|")[2] : "",
    why: held(state, due).map((hold) => [hold.why, hold.waiting_for].filter(Boolean).join(", ")).join("; "), ...(call ? callFacts(state, call) : {}),
  };
  if (isCare(due)) return reminderText(state, due.id);
  if (call) return say(call.why === "hurt" ? "alert-hurt" : "alert-call", facts);
  if (due.kind === "watch check" && isMissed(due)) return say("alert-watch-missed", facts);
  return load?.state === "ended" ? say("alert-needs-unloading", facts) : sayCode("alert", kindOf(due), facts) || slug(kindOf(due));
}

// An alert that asks again is said by the kind that it asks about.
const kindOf = (due) => (due.kind === "ask again" ? due.id.split("|")[1] : due.kind);

function answers(scene, due) {
  const load = loadAt(scene.state, [due.run, due.load]);
  const reply = (what, body) => () => press(say("did-answered", { alert: titleOf(scene.state, due) }), [answer(due, what, body)]);
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
