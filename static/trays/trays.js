// The Trays screen: where each tray is, its counts, texts, history; pieces moved, held, counted.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { ring, title } from "../alerts/alarm.js";
import { alerts, more, titleOf } from "../alerts/alerts.js";
import { hearButton, pressedLine } from "../alerts/pressed.js";
import { offer } from "../door/later.js";
import { openScreen, redraw } from "../door/screen.js";
import { inOrder, openWords, say, stationName } from "../door/words.js";
import { toSettle } from "../views/asks.js";
import { isTold, told } from "../views/below.js";
import { cautions } from "../views/cautions.js";
import { alertsFor, isLead } from "../views/doing.js";
import { handedOver } from "../views/handing.js";
import { foot, refusals } from "../views/head.js";
import { button, sheet, syncSheet } from "../views/sheet.js";
import { isOpen } from "../views/tray_list.js";
import { openBulk, openGive } from "./several.js";
import { wholeTray } from "./tray.js";

let chosen = new URLSearchParams(location.search).get("run");

function sceneOf(state, me) {
  const runs = Object.values(state.runs ?? {}).filter((run) => run.state === "open" || run.id === chosen);
  return { state, me, runs, run: runs.find((run) => run.id === chosen) ?? runs[0] };
}

const page = (scene) => html`
  <h1>${say("trays-h1")}</h1>
  <div class="attention">${refusals()}${pressedLine(scene)}${alerts(scene)}${more(scene)}</div>${toSettle(scene)}
  ${scene.run ? ofRun(scene) : html`<p class="empty">${say("trays-none")}</p><a class="button" href="/plan">${say("go-plan")}</a>`}
  ${foot()}${sheet(scene)}`;

const ofRun = (scene) => html`
  ${scene.runs.length > 1 ? html`<div class="choices" role="group" aria-label=${say("trays-run")}>
    ${scene.runs.map((run) => html`<button type="button" aria-pressed=${String(run === scene.run)} @click=${() => { chosen = run.id; redraw(); }}>${run.name}</button>`)}</div>`
    : html`<p class="since">${scene.run.name}</p>`}
  ${button(say("trays-bulk"), () => openBulk(scene), "full")}
  ${isLead(scene.state, scene.me) ? button(say("give-open"), () => openGive(scene), "full spaced") : nothing}
  ${handedOver({ ...scene, runs: [scene.run] })}
  ${traysOf(scene)}
  ${steps(scene)}
  ${Object.keys(scene.run.boards ?? {}).length ? html`<p><a class="button" href=${`/plan/runs/${encodeURIComponent(scene.run.id)}`}>${say("trays-boards")}</a></p>` : nothing}`;

// Trays that are still on their way come first; those that are done or empty are folded behind them.
function traysOf(scene) {
  const all = inOrder(Object.keys(scene.run.trays ?? {})).map((id) => scene.run.trays[id]);
  const over = all.filter((tray) => !isOpen(tray));
  const good = over.filter((tray) => tray.good).length;
  const whole = (some) => some.map((tray) => wholeTray(scene, tray));
  const name = [good ? say("trays-done", { count: good }) : "", over.length > good ? say("trays-empty-count", { count: over.length - good }) : ""].filter(Boolean).join(", ");
  return html`${whole(all.filter(isOpen))}
    ${over.length ? html`<details ?open=${over.length === all.length}><summary>${name}</summary>${whole(over)}</details>` : nothing}`;
}

// Every step with its start list, setup sheet, checks and cautions, to be read without the server: the route of a run, folded; where it was changed on the way, each of its revisions.
const steps = (scene) => html`<details><summary>${say("trays-steps")}</summary>
  ${scene.run.routes.map((route) => html`
    ${scene.run.routes.length > 1 ? html`<h2>${say("trays-steps-from", { tray: route.from_tray })}</h2>` : nothing}
    ${route.steps.map((step, index) => oneStep(scene.state, step, index + 1, route.steps.length))}`)}</details>`;

const oneStep = (state, step, number, all) => {
  const here = { step, station: state.stations?.[step.station] };
  return html`<details><summary>${say("trays-step", { number, all, step: step.name, station: stationName(state, step.station) })}</summary>
    ${cautions(step)}${told(here)}${step.care?.length || isTold(here) ? nothing : html`<p>${say("trays-step-bare")}</p>`}</details>`;
};

const root = document.getElementById("trays");

function drawn(scene, isFirst) {
  syncSheet(root);
  // The address names a tray, which exists only now.
  const tray = isFirst && location.hash ? document.getElementById(location.hash.slice(1)) : null;
  tray?.closest("details")?.setAttribute("open", "");
  tray?.scrollIntoView();
}

function second(scene) {
  const due = alertsFor(scene);
  ring(scene, due);
  hearButton(scene);
  title(due.length ? titleOf(scene.state, due[0]) : "");
}

offer({ sheets: async () => (await import("../sheets/sheets.js")).SHEETS });
await openScreen(root, { sceneOf, page, drawn, second, words: ["en", "en.sheets", "en.care"].map(openWords) });
