// One load, opened from its machine: what it is, and every press that its state allows.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { minutesTo } from "../door/clock.js";
import { about, handOver, press, startLoad, startMachine, startUnloading } from "../door/press.js";
import { redraw } from "../door/screen.js";
import { loadTitle, say } from "../door/words.js";
import { details, lateRunning } from "../views/below.js";
import { cautions } from "../views/cautions.js";
import { careOf, isOverdue, isPutAside, isWatched, loadAt, loadScene, ringingFor } from "../views/doing.js";
import { shownButtons } from "../views/handing.js";
import { minutesFor, minutesStepper, runButton } from "../views/operation.js";
import { button, closing, openSheet, sheetHead } from "../views/sheet.js";
import { openCount } from "./bad_piece.js";
import { openStopped, settleChoices } from "./stopped.js";

export function openLoad({ run, id }) {
  const it = { asked: false };
  openSheet((scene) => {
    const load = loadAt(scene.state, [run, id]);
    if (!load) return html`${sheetHead(say("load-gone"))}<p>${say("load-gone-words")}</p>`;
    const here = loadScene(scene.state, load);
    return html`${sheetHead(loadTitle(here.run, load))}${presses(scene, here, it)}${cautions({ care: careOf(here.step, load) })}${details(here)}
      <div class="stack">${shownButtons(scene, load.station)}</div>`;
  });
}

// By the estimate it still runs: asked once, because unloading ends its clock.
const left = (load) => (load.end_at ? Math.floor(minutesTo(load.end_at)) : 0);

const askStopped = (load, it, unload) => html`<p class="notice" role="status">${say("load-still-left", { minutes: left(load) })}</p>
  <div class="pair">${button(say("ui-yes"), closing(unload))}${button(say("ui-no"), () => { it.asked = false; redraw(); })}</div>`;

function unloading(load, it, unload) {
  if (left(load) < 1) return button(say("go-at-it"), closing(unload), isOverdue(load) ? "go" : "");
  return it.asked ? askStopped(load, it, unload) : button(say("go-at-it"), () => { it.asked = true; redraw(); });
}

function presses(scene, here, it) {
  const { state, me } = scene;
  const { load, station } = here;
  const does = (words, action, kind) => button(words, closing(action), kind);
  const alerts = ringingFor(state, load);
  const stopped = button(say("load-stopped"), () => openStopped(load));
  const off = isPutAside(load) || load.state === "ended" ? does(say("load-off"), () => press(say("did-off", { load: loadTitle(here.run, load) }), [{ kind: "load taken off", ...about(load) }])) : nothing;
  if (load.state === "stopped") return settleChoices(scene, load);
  if (load.state === "running") {
    const mayTakeOver = isWatched(state, load) && load.watcher && load.watcher !== me;
    return html`<div class="stack">${unloading(load, it, () => startUnloading(load, alerts))}
      ${minutesStepper(here)}${does(say("load-still-runs"), () => startMachine(load, minutesFor(here)))}${stopped}
      ${does(say("load-ended"), () => press(say("did-ended", { station: station?.name ?? "" }), [{ kind: "machine ended", ...about(load) }]))}
      ${mayTakeOver ? does(say("go-take-over"), () => handOver([load], me, state.people[me])) : nothing}
      ${load.end_at && !isOverdue(load) ? html`<a class="button" href=${`/calendar?${new URLSearchParams({ run: load.run, load: load.id })}`}>${say("calendar-put")}</a>` : nothing}</div>`;
  }
  if (load.state === "ended") return html`<div class="stack">${does(say("go-at-it"), () => startUnloading(load, alerts), "go")}${stopped}${off}</div>`;
  if (load.state === "loading") return html`${runButton(here, me)}${lateRunning(here)}<div class="stack">${does(say("load-join"), () => startLoad(load))}${off}</div>`;
  return html`<div class="stack">${does(say("load-join"), () => startLoad(load), "go")}${button(say("go-count"), () => openCount(load))}${off}</div>`;
}
