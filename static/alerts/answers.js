// What can be answered to an alert, each in one press that stops it on every page: a look at a machine that must be watched
// shows that somebody answered; it is no fire watch, and nothing here lets anybody leave.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { open } from "../door/later.js";
import { about, answer, isoIn, press, startUnloading } from "../door/press.js";
import { loadTitle, personName, say, slug, stationName, stepOf, trayWords } from "../door/words.js";
import { careText } from "../views/cautions.js";
import { easyDays } from "../views/controls.js";
import { callOf, handsOf, isLead, isWatch, ringing, ringingFor } from "../views/doing.js";
import { button, closing, openSheet, sheetHead } from "../views/sheet.js";

const AGAIN = [5, 10, 20];

/** 'Ask again in 5, 10, 20 min': `reply(body)` gives what a press does. */
export const again = (reply, more = nothing) => html`<div class="choices spaced">
  ${AGAIN.map((minutes) => button(say("alert-again-in", { minutes }), reply({ ask_again_at: isoIn(minutes) })))}${more}</div>`;

/** 'It still runs', and when to ask again. */
export const stillRunning = (reply, more) => html`<p class="ask">${say("alert-still-running")}</p>${again((body) => reply("still running", body), more)}`;

/** Somebody looked: answers all that asks for a look at this machine. */
export function looked(state, load, person) {
  const asked = ringingFor(state, load).filter((due) => isWatch(due) && !due.said);
  const checked = { kind: "watch checked", ...about(load), person, body: { at_check: load.checks ?? 0 } };
  const left = elsewhere(state, load, person);
  const aside = left ? [{ kind: "load put aside", ...about(left), person }] : [];
  return press(say("did-watch-checked"), [...aside, checked, ...asked.map((due) => ({ ...answer(due, "seen"), person }))]);
}

/** What my hands are at, where this machine cannot be watched from: it is put aside first. */
function elsewhere(state, load, person) {
  const at = handsOf(state, person)?.load;
  return at && !(at.run === load.run && at.id === load.id) && !state.stations?.[load.station]?.watch_ok?.includes(at.station) ? at : null;
}

/** 'No flame, work flat …': what is looked at is the station's own, as a CNC has no air assist. */
export const lookWords = (state, due) => say("alert-watch-go", { kind: slug(state.stations?.[due.station]?.kind ?? "") });

const aside = (left, state) => (left ? html`<p>${say("watch-aside", { load: loadTitle(state.runs[left.run], left) })}</p>` : nothing);

export const watchAnswers = ({ state, me }, due, load) => html`
  ${aside(elsewhere(state, load, me), state)}
  ${button(lookWords(state, due), () => looked(state, load, me), "go")}
  ${button(say("alert-stopped"), () => open("stopped", load), "danger full")}
  <p class="due">${careText("watch-note")} ${careText("never-leave")}</p>`;

/** 'Robin pressed at 19:50 that the laser runs …' */
export const saidWords = (state, load) =>
  say("said-runs", { station: stationName(state, load.station), person: load.watcher ? personName(state, load.watcher) : say("ui-somebody"), at: load.started_at, load: loadTitle(state.runs?.[load.run], load) });

/** What can be answered: it does not run; it runs and I watch it; it runs for longer. */
export function saidAnswers(scene, due, load) {
  const reply = (what, body) => closing(() => press(say("did-answered", { alert: saidWords(scene.state, load) }), [answer(due, what, body)]));
  return html`<div class="stack">${button(say("said-watch"), reply("seen"), "go")}${button(say("said-not-running"), reply("stopped"), "full")}</div>
    ${stillRunning(reply)}`;
}

export function openSaid({ said }) {
  openSheet((scene) => {
    const load = Object.values(scene.state.said_running ?? {}).find((load) => load.said === said);
    const due = (scene.state.dues ?? []).find((due) => due.said === said);
    if (!load || !due) return html`${sheetHead(say("load-gone"))}<p>${say("said-over")}</p>`;
    return html`${sheetHead(stationName(scene.state, load.station))}<p>${saidWords(scene.state, load)}</p>${saidAnswers(scene, due, load)}`;
  });
}

/** What to do when somebody is hurt or something burns, and the number to press; `beside` it what else is pressed then. */
export function emergency(state, beside = nothing) {
  const number = state.shop?.emergency ?? "112";
  return html`<p><b>${careText("emergency", { number })}</b></p><div class="pair"><a class="button danger" href=${`tel:${number.replaceAll(/[^+\d]/g, "")}`}>${say("emergency-call", { number })}</a>${beside}</div>`;
}

/** What a call's sentences may name. */
export function callFacts(state, call) {
  return {
    person: state.people?.[call.person]?.name ?? say("ui-somebody"), tray: call.tray, why: say(`call-why-${call.why.replace(" ", "-")}`),
    step: stepOf(state.runs?.[call.run], call.step, call.tray)?.name ?? "",
  };
}

export function callAnswers(scene, due) {
  const call = callOf(scene.state, due);
  const facts = callFacts(scene.state, call);
  const done = () => press(say("did-call-done", facts), [answer(due, "done")]);
  const going = () => press(say("did-call-going", facts), [{ kind: "alert claimed", run: call.run, tray: call.tray, body: { alert: due.id } }]);
  return html`${call.note ? html`<p>${call.note}</p>` : nothing}${call.times ? html`<p class="soft">${say("call-times", call)}</p>` : nothing}
    ${call.why === "hurt" ? emergency(scene.state) : nothing}
    ${call.why === "look" ? lookAnswers(scene.state, due, call) : html`<div class="pair">${button(say("call-going"), going, "go")}${button(say("call-done"), done)}</div>`}`;
}

// One look lets all the trays go on that were given together.
function lookAnswers(state, due, call) {
  const facts = callFacts(state, call);
  const given = state.runs?.[call.run]?.given ?? {};
  const step = call.step || (Object.keys(given).find((key) => key.endsWith(`|${call.tray}`)) ?? "").split("|")[0];
  const together = Object.entries(given).filter(([key, hand]) => key.startsWith(`${step}|`) && hand.look && hand.to === call.person).map(([key]) => key.split("|")[1]);
  const look = (result) => (tray) => ({ kind: "look given", run: call.run, tray, operation: step, body: { result } });
  const good = () => press(say("did-look-pass", facts), [...new Set([call.tray, ...together])].map(look("pass")).concat(answer(due, "done")));
  const notYet = () => press(say("did-look-fail", facts), [look("fail")(call.tray), answer(due, "done")]);
  return html`<div class="pair">${button(say("look-good"), good, "go")}${button(say("look-not-yet"), notYet)}</div>`;
}

/** Calls to which somebody is on the way, and one's own, until they are done. */
export function openCalls({ state, me }) {
  return Object.entries(state.calls ?? {}).map(([event, call]) => {
    const claim = state.answers?.[`call|${event}`];
    const own = call.person === me;
    if (claim?.answer !== "claimed" && !own) return nothing;
    if (!own && call.why === "look" && !isLead(state, me)) return nothing;
    const facts = callFacts(state, call);
    const done = () => press(say("did-call-done", facts), [answer({ id: `call|${event}`, run: call.run, tray: call.tray }, "done")]);
    const words = claim ? say("call-on-the-way", { ...facts, who: personName(state, claim.person) }) : say("call-own", facts);
    return html`<section class="asked"><p><b>${words}</b></p>${button(say(own ? "call-no-longer" : "call-done"), done, "full")}</section>`;
  });
}

// Somebody felt it: dry, or not yet, and then neither are the trays beside it that had the same coat.
export function waitOver(state, due, reply) {
  const run = state.runs?.[due.run];
  const rest = run?.trays?.[due.tray]?.rests?.[due.step];
  const beside = ringing(state).filter((other) => other.kind === "wait over" && other.id !== due.id && other.run === due.run && other.step === due.step);
  const trays = beside.map((other) => other.tray);
  const until = (at) => press(say("did-not-dry", { trays: trayWords([due.tray, ...trays]), until: at }), [due, ...beside].map((other) => answer(other, "still running", { ask_again_at: at })));
  return html`${trays.length ? html`<p>${say("wait-beside", { trays: trayWords(trays) })}</p>` : nothing}
    ${button(say("alert-seen"), reply("seen"), "go")}
    ${["dry", "cure"].includes(rest?.why) ? html`<p class="ask">${say("wait-not-dry")}</p><div class="pair">
      ${button(say("wait-12-h"), () => until(isoIn(12 * 60)))}${button(say("wait-tomorrow"), () => until(isoIn(24 * 60)))}</div>` : nothing}`;
}

// What was out of use until now: Now offers it, and the plan counts on it, once somebody says that it is back.
export function stationBack(state, due) {
  const { name, out } = state.stations?.[due.station] ?? {};
  const body = out?.why ? { why: out.why } : {};
  const notYet = (until) => () => press(say("did-out-of-use", { station: name }), [{ kind: "station out of use", station: due.station, body: { ...body, ...(until ? { until } : {}) } }]);
  return html`${out?.why ? html`<p>${out.why}</p>` : nothing}
    ${button(say("machines-back"), () => press(say("did-back-in-use", { station: name }), [{ kind: "station back in use", station: due.station }]), "go")}
    <p class="ask">${say("station-not-back")}</p>
    <div class="choices">${easyDays().map(([until, words]) => button(words, notYet(until)))}</div>`;
}

// A sensor asks; only what a person answers changes the load.
export function looksEnded({ state }, due, load, reply) {
  const at = state.stations?.[due.station]?.signal?.at ?? due.due_at;
  const left = () => press(say("did-ended", { station: stationName(state, due.station) }), [{ kind: "machine ended", ...about(load) }, answer(due, "ended")]);
  return html`<p>${say("alert-looks-ended-about", { at })}</p>
    ${button(say("go-at-it"), () => startUnloading(load, [due]), "go")}
    <div class="pair">${button(say("alert-looks-ended-left"), left)}${button(say("alert-stopped"), () => open("stopped", load))}</div>
    ${stillRunning(reply)}`;
}
