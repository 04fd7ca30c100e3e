// The Now screen: opens the outbox and the state, and draws at each change and as time passes.

import { html, nothing, render } from "../vendor/lit-html-3.3.3.js";
import { resumeSound, ring, title } from "./alarm.js";
import { alerts, alertsFor, isDanger, soundButton, titleOf } from "./alerts.js";
import { asks, toSettle } from "./asks.js";
import { calledAway } from "./away.js";
import { openNotThis } from "./declined.js";
import { handsOf, openMoves } from "./doing.js";
import { redraw, setDraw } from "./drawing.js";
import { below, first, titleOf as moveTitle } from "./first.js";
import { foot, refusals } from "./foot.js";
import { header } from "./header.js";
import { machines } from "./machines.js";
import { onOutbox, openOutbox } from "./outbox.js";
import { others } from "./others.js";
import { howLong, sessionEnd } from "./session.js";
import { sheet, syncSheet } from "./sheet.js";
import { me, onShop, openShop, shop } from "./shop.js";
import { stoppedOperations } from "./stopped_operations.js";
import { trays } from "./traylist.js";
import { waits } from "./waits.js";
import { openWrong } from "./wrong.js";
import { loadWords, say } from "./words.js";

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
    ${isDanger(scene) ? [alerts(scene), asks(scene)] : [asks(scene), alerts(scene)]}${refusals()}
    ${howLong(scene)}
    ${first(scene)}
    ${wrongAndAway(scene)}
  </div>
  <div class="second-column">
    ${machines(scene)}
    ${soundButton()}
    ${below(scene)}
    ${stoppedOperations(scene)}
    ${others(scene)}
    ${waits(scene)}
    ${scene.runs.map((run) => trays({ ...scene, run, several: scene.runs.length > 1 }))}
    ${toSettle(scene)}
    ${sessionEnd(scene)}
  </div>
  ${foot()}
  ${sheet(scene)}`;

function wrongAndAway(scene) {
  const { state, me: person } = scene;
  if (state.people?.[person]?.away) return nothing;
  const move = handsOf(state, person) ? null : openMoves(state, person)[0];
  return html`<div class="pair"><button type="button" @click=${() => openWrong(scene)}>${say("go-wrong")}</button>
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
  ring(scene, due);
  title(due.length ? titleOf(state, due[0]) : "");
  redraw();
}

setDraw(draw);
onShop(redraw);
onOutbox(redraw);
document.addEventListener("pointerdown", resumeSound, { passive: true });
await Promise.all([loadWords(), openOutbox()]);
void openShop();
setInterval(second, 1000);
