// One load, opened from its machine: what it is, and every press that its state allows.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { openCount } from "./bad_piece.js";
import { details, lateRunning } from "../views/below.js";
import { cautions } from "../views/cautions.js";
import { isOverdue, isPutAside, isWatched, loadAt, loadScene, ringing } from "../views/doing.js";
import { shownButtons } from "../views/handing.js";
import { minutesFor, minutesStepper, runButton } from "../views/operation.js";
import { about, handOver, press, startLoad, startMachine, startUnloading } from "../door/press.js";
import { closing, openSheet, sheetHead } from "../views/sheet.js";
import { openStopped, settleChoices } from "./stopped.js";
import { loadTitle, say } from "../door/words.js";

export function openLoadSheet({ run, id }) {
  openSheet((scene) => {
    const load = loadAt(scene.state, [run, id]);
    if (!load) return html`${sheetHead(say("load-gone"))}<p>${say("load-gone-words")}</p>`;
    const here = loadScene(scene.state, load);
    return html`${sheetHead(loadTitle(here.run, load))}${cautions(here.step)}${presses(scene, here)}${details(here)}
      <div class="stack">${shownButtons(scene, load.station)}</div>`;
  });
}

function presses(scene, here) {
  const { load, station } = here;
  const button = (words, action, big = false) => html`<button type="button" class=${big ? "go" : ""} @click=${closing(action)}>${words}</button>`;
  const alerts = ringing(scene.state).filter((due) => due.load === load.id && due.run === load.run);
  const off = isPutAside(load) || load.state === "ended" ? button(say("load-off"), () => press(say("did-off", { load: loadTitle(here.run, load) }), [{ kind: "load taken off", ...about(load) }])) : nothing;
  if (load.state === "stopped") return settleChoices(scene, load);
  if (load.state === "running") {
    return html`<div class="stack">${button(say("go-at-it"), () => startUnloading(load, alerts), isOverdue(load))}
      ${minutesStepper(here)}${button(say("load-still-runs"), () => startMachine(load, minutesFor(here)))}
      <button type="button" @click=${() => openStopped(load)}>${say("load-stopped")}</button>
      ${button(say("load-ended"), () => press(say("did-ended", { station: station?.name ?? "" }), [{ kind: "machine ended", ...about(load) }]))}
      ${isWatched(scene.state, load) && load.watcher && load.watcher !== scene.me ? button(say("go-take-over"), () => handOver([load], scene.me, scene.state.people[scene.me])) : nothing}
      ${load.end_at && !isOverdue(load) ? html`<a class="button" href=${`/calendar?${new URLSearchParams({ run: load.run, load: load.id })}`}>${say("calendar-put")}</a>` : nothing}</div>`;
  }
  if (load.state === "ended") return html`<div class="stack">${button(say("go-at-it"), () => startUnloading(load, alerts), true)}
    <button type="button" @click=${() => openStopped(load)}>${say("load-stopped")}</button>${off}</div>`;
  if (load.state === "loading") return html`${runButton(here)}${lateRunning(here)}<div class="stack">${button(say("load-join"), () => startLoad(load))}${off}</div>`;
  return html`<div class="stack">${button(say("load-join"), () => startLoad(load), true)}
    <button type="button" @click=${() => openCount(load)}>${say("go-count")}</button>${off}</div>`;
}

