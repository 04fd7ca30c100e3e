// A machine that a press says to run which did not fit: it may be true, so somebody goes and looks, whatever becomes of
// the press. It ends only when somebody says that the machine does not run.

import { html } from "../vendor/lit-html-3.3.3.js";
import { answer, isoIn, press } from "../door/press.js";
import { closing, openSheet, sheetHead } from "../views/sheet.js";
import { loadTitle, personName, say, stationName } from "../door/words.js";

const AGAIN = [5, 10, 20];

/** 'Robin pressed at 19:50 that the laser runs …' */
export const saidWords = (state, load) =>
  say("said-runs", { station: stationName(state, load.station), person: load.watcher ? personName(state, load.watcher) : say("ui-somebody"), at: load.started_at, load: loadTitle(state.runs?.[load.run], load) });

/** What can be answered: it does not run; it runs and I watch it; it runs for longer. */
export function saidAnswers(scene, due, load) {
  const reply = (what, body) => closing(() => press(say("did-answered", { alert: saidWords(scene.state, load) }), [answer(due, what, body)]));
  return html`<div class="stack"><button type="button" class="go" @click=${reply("seen")}>${say("said-watch")}</button>
    <button type="button" class="full" @click=${reply("stopped")}>${say("said-not-running")}</button></div>
    <p class="ask">${say("alert-still-running")}</p><div class="choices">${AGAIN.map((minutes) => html`<button type="button" @click=${reply("still running", { ask_again_at: isoIn(minutes) })}>${say("alert-again-in", { minutes })}</button>`)}</div>`;
}

export function openSaid({ said }) {
  openSheet((scene) => {
    const load = Object.values(scene.state.said_running ?? {}).find((one) => one.said === said);
    const due = (scene.state.dues ?? []).find((one) => one.said === said);
    if (!load || !due) return html`${sheetHead(say("load-gone"))}<p>${say("said-over")}</p>`;
    return html`${sheetHead(stationName(scene.state, load.station))}<p>${saidWords(scene.state, load)}</p>${saidAnswers(scene, due, load)}`;
  });
}
