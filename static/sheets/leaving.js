// Leaving. 'Called away': one large press, no reason asked; a watched machine is paused and made safe first. The closing checklist
// at the end of a session: what became of the day's rags, oily dust and burnt cuts has to be said.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { isSaid, lockUpReminders, reminderChoice, saidDrafts } from "../alerts/reminders.js";
import { about, handOver, noteLeft, press, startDraft } from "../door/press.js";
import { list, loadWords, say, stationName, stepOf, sum } from "../door/words.js";
import { asPerson } from "../table/record.js";
import { atHand } from "../table/sight.js";
import { careText } from "../views/cautions.js";
import { tick, toggle } from "../views/controls.js";
import { handsOf, inSession, isWatched, loadAt, openLoads, watchedBy } from "../views/doing.js";
import { openMoves, titleOf } from "../views/moves.js";
import { countedOf, scrapOf } from "../views/pieces.js";
import { button, closeSheet, closing, goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

const LOCK_UP = ["rags", "power", "chargers", "bins", "smoulder", "first-job"];
const FIRST_JOBS = ["unload", "settle", "go on", "start", "wipe", "run", "finish"];

export function calledAway(scene) {
  const running = watchedBy(scene.state, scene.me);
  const go = (paused = []) => {
    closeSheet();
    const hands = handsOf(scene.state, scene.me);
    noteLeft(hands?.load);
    const stops = paused.map((load) => ({ kind: "load stopped", ...about(load), body: { why: "other", note: say("away-paused") } }));
    press(say("did-away"), [...stops, { kind: "person called away" }]);
  };
  if (!running.length) return go();
  openSheet((drawn) => html`${sheetHead(say("away-title"))}
    <p class="cautions">${say("away-make-safe", { stations: list(running.map((load) => stationName(drawn.state, load.station))) })}</p>
    ${button(say("away-is-safe"), () => go(running), "go")}
    ${watchers(drawn, running, () => go())}`);
}

/** A button for each other person who can watch these machines from where they are: they do from now on. */
function watchers(scene, running, then = () => {}) {
  const others = canWatch(scene, running);
  if (!others.length) return html`<p class="hint">${say("away-nobody", { count: running.length })}</p>`;
  return others.map(([key, person]) => button(say("away-other-watches", { person: person.name }), () => { handOver(running, key, person); then(); }, "full spaced"));
}

function canWatch({ state, me }, running) {
  const draft = { base: state, load: (run, key) => loadAt(state, [run, key]) };
  return Object.entries(state.people ?? {}).filter(([key, person]) =>
    key !== me && inSession(state, key) && !person.away && running.every((load) => atHand(draft, asPerson(key, person), load)));
}

// 'How many of the five are sanded?' The rest goes on with the same press.
export function openHowMany(scene, load) {
  const run = scene.state.runs[load.run];
  const done = Object.fromEntries(Object.keys(load.pieces).map((tray) => [tray, countedOf(run, tray, load)[0]]));
  const go = () => {
    const counted = Object.keys(done).filter((tray) => done[tray]).map((tray) => ({ kind: "pieces counted", ...about(load), tray, body: { good: done[tray], scrap: scrapOf(run, tray, load) } }));
    press(say("did-back"), [{ kind: "person came back" }, ...counted, startDraft(load)]);
  };
  openSheet(() => html`${sheetHead(say("away-how-many", { pieces: sum(load.pieces), step: stepOf(run, load.step)?.name ?? "" }))}
    ${Object.keys(done).map((tray) => stepper(loadWords(run, { ...load, id: "", trays: [tray] }), done[tray], { max: load.pieces[tray], set: (count) => { done[tray] = count; } }))}
    ${goButton(say("away-go-on"), go)}`);
}

/** The list at the end of a session. */
export function openLockUp() {
  const ticked = new Set();
  const said = new Map();
  openSheet((scene) => {
    const running = openLoads(scene.state).filter((load) => load.state === "running" && (!load.watcher || load.watcher === scene.me));
    const asked = lockUpReminders(scene.state);
    const points = asked.some((id) => id.startsWith("care lock-up|rags")) ? LOCK_UP.filter((key) => key !== "rags") : LOCK_UP;
    const unsaid = asked.filter((id) => !isSaid(id, said)).length;
    const left = points.filter((key) => !ticked.has(key)).length + unsaid;
    const went = () => {
      const done = LOCK_UP.filter((key) => ticked.has(key) || !points.includes(key));
      press(say("did-went"), [...saidDrafts(scene.state, said), { kind: "person went", body: { ticked: done } }]);
    };
    return html`${sheetHead(say("lockup-title"))}
      ${running.length ? stillRunning(scene, running) : nothing}
      ${asked.map((id) => reminderChoice(scene.state, id, said))}
      ${points.map((key) => tick(words(scene, key), ticked.has(key), () => toggle(ticked, key)))}
      ${goButton(running.length ? say("lockup-wait") : unsaid ? say("lockup-say-first") : left ? say("list-left", { left }) : say("go-stop"), went, Boolean(left || running.length))}
      ${left && !unsaid && !running.length ? button(say("lockup-not-all"), closing(went), "quiet full spaced") : nothing}`;
  });
}

function words(scene, key) {
  const text = careText(`lockup-${key}`);
  const job = key === "first-job" ? openMoves(scene.state, scene.me).find((move) => FIRST_JOBS.includes(move.code)) : null;
  return job ? html`${text}: <b>${titleOf(scene.state, job)}</b>` : text;
}

// Nobody goes from a running machine; a watched one may be handed to somebody who stays.
function stillRunning(scene, running) {
  const stations = list(running.map((load) => stationName(scene.state, load.station)));
  return html`<p class="cautions">${say("lockup-running", { stations })}</p>
    ${running.every((load) => isWatched(scene.state, load)) ? html`<div class="handed">${watchers(scene, running)}</div>` : nothing}`;
}
