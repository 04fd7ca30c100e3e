// The Now screen: what is drawn where, what comes later, and what each second brings.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { fetchRest, here, offer, open, part, wanted } from "../door/later.js";
import { recall } from "../door/remembered.js";
import { openScreen, redraw } from "../door/screen.js";
import { fetchOverlay } from "../door/shop.js";
import { openWords, say } from "../door/words.js";
import { alertsFor, handsOf, isDanger, isLead, isWatch, watchedBy } from "../views/doing.js";
import { foot, header, refusals } from "../views/head.js";
import { machines } from "../views/machines.js";
import { openMoves, titleOf } from "../views/moves.js";
import { button, sheet, syncSheet } from "../views/sheet.js";
import { first, hasUnderWay } from "./first.js";
import { asksHowLong, howLong, isOver, over, sessionEnd } from "./session.js";

// What the first drawing does without.
const PARTS = {
  alarm: () => import("../alerts/alarm.js"),
  alerts: () => import("../alerts/alerts.js"),
  asks: () => import("../views/asks.js"),
  below: () => import("../views/below.js"),
  clock: () => import("../door/wrong_clock.js"),
  finish: () => import("../views/finish.js"),
  handing: () => import("../views/handing.js"),
  others: () => import("./others.js"),
  overlay: fetchOverlay,
  positions: () => import("../views/positions.js"),
  pressed: () => import("../alerts/pressed.js"),
  sheets: async () => (await import("../sheets/sheets.js")).SHEETS,
  span: () => import("./span.js"),
  spoken: () => import("../alerts/spoken.js"),
  "tray list": () => import("../views/tray_list.js"),
  "under way": () => import("../views/under_way.js"),
};

/** The state, who asks, and the run that they are at. */
function sceneOf(state, me) {
  const hands = state.people?.[me]?.hands;
  const runs = Object.values(state.runs ?? {}).filter((run) => run.state === "open");
  const firstMove = (state.moves ?? []).find((move) => move.run);
  return { state, me, run: state.runs?.[hands?.[0]] ?? state.runs?.[firstMove?.run] ?? runs[0], runs };
}

function page(scene) {
  const [section, big] = isOver(scene) ? [over(scene, nextTime(scene)), nothing] : first(scene);
  return html`
  ${header(scene)}
  <div class="columns"><div class="attention">${refusals()}${attention(scene)}${scene.state.pressed ? part("pressed")?.pressedLine(scene) : nothing}</div>
  <div class="first-column">
    ${isOver(scene) ? section : html`${howLong(scene)}${stoppedUnderHands(scene)}${section}${onlyWatches(scene) ? instead(scene) : nothing}${firstPiece(scene)}${moreAlerts(scene)}${wrongAndAway(scene)}
    ${here("span")?.longSpanRow(scene)}`}
  </div>
  <div class="second-column">
    ${machines(scene)}${hasUnderWay(scene) ? part("under way")?.readable(scene) : nothing}
    ${soundButton()}
    ${here("clock")?.wrongClock(say, redraw)}
    ${isOver(scene) ? nothing : [here("below")?.below(scene), onlyWatches(scene) ? nothing : instead(scene)]}
    ${questions(scene, "toSettle")}
    ${heldTooLong(scene)}
    ${handed(scene)}
    ${below(scene)}
    ${here("alarm")?.hearing()}${here("spoken")?.spokenRow()}
    ${sessionEnd(scene)}
  </div></div>
  ${foot(big, asksHowLong(scene))}
  ${sheet(scene)}`;
}

// Below the fold: what dries until when, and the trays.
function below(scene) {
  const found = part("tray list");
  return found ? [found.waits(scene), scene.runs.map((run) => found.trays({ ...scene, run, several: scene.runs.length > 1 }))] : nothing;
}

function nextTime({ state, me: person }) {
  const move = openMoves(state, person).find((move) => !["free", "stop", "watch", "job"].includes(move.code));
  return move && titleOf(state, move);
}

let rung = new Set();

// Questions and alerts are rare: what draws them is fetched when there is one. Danger comes before every question.
function attention(scene) {
  const due = alertsFor(scene);
  const rings = due.length || Object.keys(scene.state.calls ?? {}).length ? part("alerts")?.alerts(scene) : nothing;
  const asked = questions(scene, "asks");
  return due.some((alert) => isWatch(alert) || isDanger(alert, scene.state)) ? [rings, asked] : [asked, rings];
}

// What else calls and is no danger: rows below the sentence, so that it stays in sight.
const moreAlerts = (scene) => (alertsFor(scene).length > 1 ? part("alerts")?.more(scene) : nothing);

// Holds that are over are no hurry: below the work, where no thumb rests.
const heldTooLong = (scene) => (alertsFor(scene).some((due) => due.id.includes("hold over|")) ? part("alerts")?.holdsOver(scene) : nothing);

// Who was given what; and for the lead, who was shown which station.
const handed = (scene) =>
  (scene.runs.some((run) => run.given) || isLead(scene.state, scene.me) ? here("handing")?.handedOver(scene) : nothing);

function questions(scene, which) {
  if (!Object.keys(scene.state.asks ?? {}).length && !scene.state.unsettled?.length && !scene.state.ahead) return nothing;
  return part("asks")?.[which](scene);
}

// Who watches and has nothing for the hands finds at once what else may be done.
const onlyWatches = ({ state, me }) => !handsOf(state, me) && openMoves(state, me)[0]?.code === "watch";

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

// A first piece that is to be checked is wanted at once, beside the sentence; the rest of an operation is folded.
function firstPiece({ state, me: person }) {
  const hands = handsOf(state, person);
  return hands?.step?.checks?.length && !state.people[person].away ? part("below")?.firstPieceNotice(hands) : nothing;
}

// Browsers let a page sound only after a press.
const soundButton = () =>
  (here("alarm")?.maySound() ? nothing : button(say("ui-turn-on-sound"), async () => (await wanted("alarm")).turnOnSound(), "full sound"));

function wrongAndAway(scene) {
  const { state, me: person } = scene;
  if (!person || state.people?.[person]?.away) return nothing;
  const move = handsOf(state, person) ? null : openMoves(state, person)[0];
  return html`${move?.why ? html`<p class="soft spaced">${here("others")?.why(scene, move) || "\u00a0"}</p>` : nothing}
    <div class="pair">${button(say("go-wrong"), () => open("wrong", scene))}${button(say("go-away"), () => open("away", scene))}</div>
    ${move && !["free", "stop", "watch"].includes(move.code) ? button(say("go-not-this"), () => open("not this", move, titleOf(state, move)), "quiet full") : nothing}`;
}

function second(scene) {
  const due = alertsFor(scene);
  if (due.some((alert) => !rung.has(alert.id) && alert.kind !== "hold over")) window.scrollTo(0, 0);
  rung = new Set(due.map((alert) => alert.id));
  const alarm = due.length || recall("runboard.sound") === "on" ? part("alarm") : here("alarm");
  alarm?.ring(scene, due);
  alarm?.title(due.length ? part("alerts")?.titleOf(scene.state, due[0]) ?? "" : "");
  if (scene.state.pressed) part("pressed")?.hearButton(scene);
  here("spoken")?.speakOf(scene, due, root.querySelector(".now h1")?.textContent.trim());
  void here("alarm")?.stayAwake(watchedBy(scene.state, scene.me).length > 0);
}

const root = document.getElementById("now");
// A glove presses twice: the second press of one gesture must not end what the first has begun.
root.addEventListener("click", (event) => {
  if (event.detail > 1 && event.target.closest(".go")) event.stopPropagation();
}, { capture: true });
// What the big button begins is said at the top.
root.addEventListener("click", (event) => event.target.closest(".last > .go") && window.scrollTo(0, 0));

offer(PARTS);
await openScreen(root, { sceneOf, page, second, drawn: () => syncSheet(root), words: [openWords()], hears: () => here("alarm")?.maySound() });
fetchRest();
