// The Now screen: opens the outbox and the state, and draws at each change and as time passes.

import { html, nothing, render } from "../vendor/lit-html-3.3.3.js";
import { alertsFor, handsOf, isDanger, isLead, isWatch, openMoves, watchedBy } from "../views/doing.js";
import { besideWork, first, titleOf as moveTitle } from "./first.js";
import { foot, header, refusals } from "../views/head.js";
import { calledAway, fetchRest, here, openNotThis, openWrong, part, turnOnSound } from "../door/later.js";
import { machines } from "../views/machines.js";
import { onOutbox, openOutbox } from "../door/outbox.js";
import { howLong, isOver, over, sessionEnd } from "./session.js";
import { redraw, setDraw, sheet, syncSheet } from "../views/sheet.js";
import { me, onShop, openShop, shop } from "../door/shop.js";
import { openWords, say } from "../door/words.js";

const root = document.getElementById("now");
let drawn = false;

/** What every part is drawn from: the state, who asks, and the run that they are at. */
export function sceneOf(state, person) {
  const hands = state.people?.[person]?.hands;
  const open = Object.values(state.runs ?? {}).filter((run) => run.state === "open");
  const firstMove = (state.moves ?? []).find((move) => move.run);
  const run = state.runs?.[hands?.[0]] ?? state.runs?.[firstMove?.run] ?? open[0];
  return { state, me: person, run, runs: open };
}

const page = (scene) => html`
  ${header(scene)}
  <div class="first-column">
    ${attention(scene)}${refusals()}
    ${isOver(scene) ? over(scene, nextTime(scene)) : html`${howLong(scene)}${stoppedUnderHands(scene)}${first(scene)}${wrongAndAway(scene)}
    ${here("span")?.longSpanRow(scene)}`}
  </div>
  <div class="second-column">
    ${machines(scene)}
    ${besideWork(scene)}
    ${soundButton()}
    ${here("clock")?.wrongClock(say, redraw)}
    ${further(scene)}
    ${instead(scene)}
    ${questions(scene, "toSettle")}
    ${heldTooLong(scene)}
    ${handed(scene)}
    ${below(scene)}
    ${here("hearing")?.hearing()}
    ${sessionEnd(scene)}
  </div>
  ${foot()}
  ${sheet(scene)}`;

// Below the fold: what dries until when, and the trays.
function below(scene) {
  const found = part("traylist");
  return found ? [found.waits(scene), scene.runs.map((run) => found.trays({ ...scene, run, several: scene.runs.length > 1 }))] : nothing;
}

function nextTime({ state, me: person }) {
  const move = openMoves(state, person).find((one) => !["free", "stop", "watch", "job"].includes(one.code));
  return move && moveTitle(state, move);
}

let rung = new Set();

// Questions and alerts are rare: what draws them is fetched when there is one. Danger comes before every question.
function attention(scene) {
  const due = alertsFor(scene);
  const rings = due.length || Object.keys(scene.state.calls ?? {}).length ? part("alerts")?.alerts(scene) : nothing;
  const asked = questions(scene, "asks");
  return due.some((one) => isWatch(one) || isDanger(one, scene.state)) ? [rings, asked] : [asked, rings];
}

// Holds that are over are no hurry: below the work, where no thumb rests.
const heldTooLong = (scene) => (alertsFor(scene).some((due) => due.id.includes("hold over|")) ? part("alerts")?.holdsOver(scene) : nothing);

// Who was given what; and for the lead, who was shown which station.
const handed = (scene) =>
  (scene.runs.some((run) => run.given) || isLead(scene.state, scene.me) ? here("handing")?.handedOver(scene) : nothing);

function questions(scene, which) {
  if (!Object.keys(scene.state.asks ?? {}).length && !scene.state.unsettled?.length && !scene.state.ahead) return nothing;
  return part("settle")?.[which](scene);
}

// What stops an operation for everybody is wanted at once; what else could be done is folded, and may come with the rest.
function instead(scene) {
  const held = scene.runs.some((run) => Object.keys({ ...run.stopped, ...run.out }).length);
  const found = held ? part("others") : here("others");
  return found ? [found.stoppedOperations(scene), found.others(scene)] : nothing;
}

// What was stopped while one is at it is decided before one goes on.
function stoppedUnderHands({ state, me: person }) {
  const hands = handsOf(state, person);
  return hands?.run?.stopped?.[hands.step?.key] ? part("below")?.stoppedNotice(hands) : nothing;
}

// A first piece that is to be checked is wanted at once; the rest of it is folded.
function further(scene) {
  const checks = handsOf(scene.state, scene.me)?.step?.checks?.length;
  return (checks ? part("below") : here("below"))?.below(scene);
}

/** Browsers let a page sound only after a press. */
const soundButton = () =>
  here("alarm")?.soundOn() ? nothing : html`<button type="button" class="full sound" @click=${turnOnSound}>${say("ui-turn-on-sound")}</button>`;

function wrongAndAway(scene) {
  const { state, me: person } = scene;
  if (!person || state.people?.[person]?.away) return nothing;
  const move = handsOf(state, person) ? null : openMoves(state, person)[0];
  return html`${move?.why ? html`<p class="soft spaced">${here("others")?.why(scene, move) || "\u00a0"}</p>` : nothing}
    <div class="pair"><button type="button" @click=${() => openWrong(scene)}>${say("go-wrong")}</button>
    <button type="button" @click=${() => calledAway(scene)}>${say("go-away")}</button></div>
    ${move && !["free", "stop", "watch"].includes(move.code) ? html`<button type="button" class="quiet full" @click=${() => openNotThis(move, moveTitle(state, move))}>${say("go-not-this")}</button>` : nothing}`;
}

function draw() {
  const state = shop();
  if (!state) return;
  const scene = sceneOf(state, me());
  if (!drawn) root.replaceChildren();
  drawn = true;
  render(page(scene), root);
  syncSheet(root);
}

function second() {
  const state = shop();
  if (!state) return;
  const scene = sceneOf(state, me());
  const due = alertsFor(scene);
  if (due.some((one) => !rung.has(one.id) && one.kind !== "hold over")) window.scrollTo(0, 0);
  rung = new Set(due.map((one) => one.id));
  sound(scene, due);
  here("awake")?.stayAwake(watchedBy(scene.state, scene.me).length > 0);
  redraw();
}

function sound(scene, due) {
  const alarm = due.length || localStorage.getItem("runboard.sound") === "on" ? part("alarm") : here("alarm");
  alarm?.ring(scene, due);
  alarm?.title(due.length ? part("alerts")?.titleOf(scene.state, due[0]) ?? "" : "");
}

// A glove presses twice: the second press of one gesture must not end what the first has begun.
root.addEventListener("click", (event) => {
  if (event.detail > 1 && event.target.closest(".go")) event.stopPropagation();
}, { capture: true });
// What the big button begins is said at the top.
root.addEventListener("click", (event) => event.target.closest(".first-column .go") && window.scrollTo(0, 0));

setDraw(draw);
onShop(second); // what fell due rings when it is heard of, not at the next second
onOutbox(redraw);
document.addEventListener("pointerdown", () => here("alarm")?.resumeSound(), { passive: true });
await Promise.all([openWords(), openOutbox()]);
void openShop(() => here("alarm")?.soundOn());
setInterval(second, 1000);
fetchRest();
