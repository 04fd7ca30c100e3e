// The lock-up list at the end of a session. What became of the day's rags, oily dust and burnt cuts has to be said.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { watchers } from "./away.js";
import { careText } from "../views/cautions.js";
import { isWatched, openLoads, openMoves } from "../views/doing.js";
import { titleOf } from "../now/first.js";
import { tick, toggle } from "../views/operation.js";
import { press } from "../door/press.js";
import { isSaid, lockUpReminders, reminderChoice, saidDrafts } from "../alerts/reminders.js";
import { closeSheet, openSheet, redraw, sheetHead } from "../views/sheet.js";
import { list, say, stationName } from "../door/words.js";

const LOCK_UP = ["rags", "power", "chargers", "bins", "smoulder", "first-job"];
const FIRST_JOBS = ["unload", "settle", "go on", "start", "wipe", "run", "finish"];

/** The list at the end of a session. */
export function openLockUp() {
  const ticked = new Set();
  const said = new Map();
  openSheet((scene) => {
    const running = openLoads(scene.state).filter((load) => load.state === "running" && (!load.watcher || load.watcher === scene.me));
    const asked = lockUpReminders(scene.state);
    const points = asked.some((one) => one.startsWith("care lock-up|rags")) ? LOCK_UP.filter((key) => key !== "rags") : LOCK_UP;
    const unsaid = asked.filter((one) => !isSaid(one, said)).length;
    const left = points.filter((key) => !ticked.has(key)).length + unsaid;
    const went = () => {
      closeSheet();
      const done = LOCK_UP.filter((key) => ticked.has(key) || !points.includes(key));
      press(say("did-went"), [...saidDrafts(scene.state, said), { kind: "person went", body: { ticked: done } }]);
    };
    return html`${sheetHead(say("lockup-title"))}
      ${running.length ? stillRunning(scene, running) : nothing}
      ${asked.map((one) => reminderChoice(one, said))}
      ${points.map((key) => tick(words(scene, key), ticked.has(key), () => { toggle(ticked, key); redraw(); }))}
      <button type="button" class="go" ?disabled=${left || running.length} @click=${went}>
        ${running.length ? say("lockup-wait") : unsaid ? say("lockup-say-first") : left ? say("list-left", { left }) : say("go-stop")}</button>
      ${left && !unsaid && !running.length ? html`<button type="button" class="quiet full spaced" @click=${went}>${say("lockup-not-all")}</button>` : nothing}`;
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
