// The Trays screen: where each tray is, its counts, texts, history; pieces moved, held, counted.

import { html, nothing, render } from "../vendor/lit-html-3.3.3.js";
import { resumeSound, ring, title } from "../alerts/alarm.js";
import { alerts, titleOf } from "../alerts/alerts.js";
import { toSettle } from "../views/asks.js";
import { alertsFor } from "../views/doing.js";
import { handedOver } from "../views/handing.js";
import { foot, refusals } from "../views/head.js";
import { onOutbox, openOutbox } from "../door/outbox.js";
import { redraw, setDraw, sheet, syncSheet } from "../views/sheet.js";
import { me, onShop, openShop, shop } from "../door/shop.js";
import { isOpen } from "../views/tray_list.js";
import { inOrder, openWords, say } from "../door/words.js";
import { openBulk } from "./bulk.js";
import { giveButton } from "./give.js";
import { steps } from "./steps.js";
import { wholeTray } from "./tray.js";

const root = document.getElementById("trays");
let chosen = new URLSearchParams(location.search).get("run");
let drawn = false;

function sceneOf(state) {
  const runs = Object.values(state.runs ?? {}).filter((run) => run.state === "open" || run.id === chosen);
  return { state, me: me(), runs, run: runs.find((run) => run.id === chosen) ?? runs[0] };
}

const page = (scene) => html`
  <h1>${say("trays-h1")}</h1>
  ${alerts(scene)}${refusals()}${toSettle(scene)}
  ${scene.run ? ofRun(scene) : html`<p class="empty">${say("trays-none")}</p><a class="button" href="/plan">${say("go-plan")}</a>`}
  ${foot()}${sheet(scene)}`;

const ofRun = (scene) => html`
  ${scene.runs.length > 1 ? html`<div class="choices" role="group" aria-label=${say("trays-run")}>
    ${scene.runs.map((run) => html`<button type="button" aria-pressed=${String(run === scene.run)} @click=${() => { chosen = run.id; redraw(); }}>${run.name}</button>`)}</div>`
    : html`<p class="since">${scene.run.name}</p>`}
  <button type="button" class="full" @click=${() => openBulk(scene)}>${say("trays-bulk")}</button>
  ${giveButton(scene)}
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

function draw() {
  const state = shop();
  if (!state) return;
  const first = !drawn;
  if (first) root.replaceChildren();
  drawn = true;
  render(page(sceneOf(state)), root);
  syncSheet(root);
  // The address names a tray, which exists only now.
  if (first && location.hash) show(document.getElementById(location.hash.slice(1)));
}

function show(tray) {
  tray?.closest("details")?.setAttribute("open", "");
  tray?.scrollIntoView();
}

function second() {
  const state = shop();
  if (!state) return;
  const scene = sceneOf(state);
  const due = alertsFor(scene);
  ring(scene, due);
  title(due.length ? titleOf(state, due[0]) : "");
  redraw();
}

setDraw(draw);
onShop(redraw);
onOutbox(redraw);
document.addEventListener("pointerdown", resumeSound, { passive: true });
await Promise.all([openWords(), openWords("en.sheets"), openWords("en.care"), openOutbox()]);
void openShop();
setInterval(second, 1000);

