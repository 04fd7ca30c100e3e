// The lock-up list at the end of a session.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { watchers } from "./away.js";
import { isWatched, openLoads } from "./doing.js";
import { press } from "./press.js";
import { tick, toggle } from "./operation.js";
import { closeSheet, openSheet, redraw, sheetHead } from "./sheet.js";
import { list, say, stationName } from "./words.js";

const LOCK_UP = ["rags", "power", "chargers", "bins", "smoulder", "first-job"];

/** The list at the end of a session. */
export function openLockUp() {
  const ticked = new Set();
  const went = () => {
    closeSheet();
    press(say("did-went"), [{ kind: "person went", body: { ticked: LOCK_UP.filter((key) => ticked.has(key)) } }]);
  };
  openSheet((scene) => {
    const running = openLoads(scene.state).filter((load) => load.state === "running" && (!load.watcher || load.watcher === scene.me));
    return html`${sheetHead(say("lockup-title"))}
      ${running.length ? stillRunning(scene, running) : nothing}
      ${LOCK_UP.map((key) => tick(say(`lockup-${key}`), ticked.has(key), () => { toggle(ticked, key); redraw(); }))}
      <button type="button" class="go" ?disabled=${ticked.size < LOCK_UP.length || running.length} @click=${went}>
        ${running.length ? say("lockup-wait") : ticked.size < LOCK_UP.length ? say("list-left", { left: LOCK_UP.length - ticked.size }) : say("go-stop")}</button>
      ${ticked.size < LOCK_UP.length && !running.length ? html`<button type="button" class="quiet full spaced" @click=${went}>${say("lockup-not-all")}</button>` : nothing}`;
  });
}

// Nobody goes from a running machine; a watched one may be handed to somebody who stays.
function stillRunning(scene, running) {
  const stations = list(running.map((load) => stationName(scene.state, load.station)));
  return html`<p class="cautions">${say("lockup-running", { stations })}</p>
    ${running.every((load) => isWatched(scene.state, load)) ? html`<div class="handed">${watchers(scene, running)}</div>` : nothing}`;
}
