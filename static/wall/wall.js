// The wall page: machines, times and what wants somebody, for a whole room. It is drawn from the same state as Now, and
// fits itself to its screen, because nobody scrolls a wall.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { dueWords, each, titleOf, urgency } from "../alerts/alerts.js";
import { looked, lookWords } from "../alerts/answers.js";
import { moment, now } from "../door/clock.js";
import { openScreen, redraw } from "../door/screen.js";
import { serverReached } from "../door/shop.js";
import { stayAwake } from "../door/sound.js";
import { loadTitle, openWords, personName, roomName, say } from "../door/words.js";
import { careText } from "../views/cautions.js";
import { inSession, isDanger, isOthers, isWatch, loadAt, ringing } from "../views/doing.js";
import { machines, people, waits } from "./parts.js";

const LARGEST = 1.4;
const SMALLEST = 0.5;
const STEP = 0.05;
const root = document.getElementById("wall");
let reachedAt = NaN;

/** What everybody is called for: a session's end is its own person's affair, on their own phone. */
const callsOf = (state) => ringing(state).filter((due) => due.kind !== "session end");

function page({ state, me }) {
  const due = callsOf(state);
  const parts = [machines(state), people(state), waits(state)];
  return html`
    <header><h1>${state.shop?.name ?? ""}</h1><time>${moment(now())}</time></header>
    ${serverReached() ? nothing : html`<p class="away" role="status">${say("wall-no-server", { at: moment(reachedAt) })}</p>`}
    ${calls(state, due, me)}
    <div class=${parts[1] === nothing && parts[2] === nothing ? "one" : "both"}><div>${parts[0]}</div><div>${parts[1]}${parts[2]}</div></div>
    ${due.length || parts.some((part) => part !== nothing) ? nothing : html`<p class="quiet">${say("wall-quiet")}</p>`}`;
}

// What wants somebody, on top and large. Only a look at a watched machine can be confirmed here, with one press that says
// who answers: whoever stands before the wall may see that machine.

const MOST = 3;

function calls(state, due, person) {
  if (!due.length) return nothing;
  const all = each(due).sort((one, other) => urgency(state, other) - urgency(state, one));
  const shown = all.slice(0, MOST);
  return html`<div class="all-calls" role="alert" aria-live="assertive">
    ${shown.map((due) => call(state, due, person))}
    ${all.length > shown.length ? html`<p class="more">${say("wall-more", { count: all.length - shown.length })}</p>` : nothing}</div>`;
}

function call(state, due, person) {
  const load = loadAt(state, [due.run, due.load]);
  const where = [load && loadTitle(state.runs[load.run], load), roomName(state, state.stations?.[due.station]?.room)].filter(Boolean).join(" · ");
  return html`<section class="call ${isDanger(due, state) ? "red" : "act"}">
    <div><p class="title">${titleOf(state, due)}</p>${where ? html`<p class="where">${where}</p>` : nothing}
      ${isWatch(due) ? html`<p class="where">${dueWords(due)}. ${careText("watch-note")}</p>` : nothing}</div>
    ${isWatch(due) && load ? answers(state, due, load, person) : html`<time>${moment(due.due_at)}</time>`}</section>`;
}

function answers(state, due, load, person) {
  const who = load.watcher || person;
  const others = Object.keys(state.people ?? {}).filter((key) => key !== who && inSession(state, key));
  return html`<div class="answers"><button type="button" class="go" @click=${() => looked(state, load, who)}>
      ${lookWords(state, due)}<small>${personName(state, who)}</small></button>
    ${others.map((key) => html`<button type="button" @click=${() => looked(state, load, key)}>${say("wall-answers", { person: personName(state, key) })}</button>`)}</div>`;
}

function drawn({ state }) {
  // One root, one class: the frame flashes for everybody, red only for what is dangerous. What somebody is asked alone at
  // first is shown without it.
  const due = callsOf(state).filter((alert) => !isOthers(alert, ""));
  document.body.className = due.length ? `calls ${due.some((alert) => isDanger(alert, state)) ? "danger-calls" : ""}` : "";
  fit();
}

let fitted = "";

// As large as it can be; measured again where words have changed, not for each minute that passes.
function fit() {
  const key = `${window.innerWidth}x${window.innerHeight} ${root.textContent.replaceAll(/\d/g, "0")}`;
  if (key === fitted) return;
  fitted = key;
  for (let size = LARGEST; size >= SMALLEST; size -= STEP) {
    root.style.setProperty("--fit", size.toFixed(2));
    if (root.scrollHeight <= window.innerHeight && root.scrollWidth <= window.innerWidth) return;
  }
}

function second() {
  if (serverReached()) reachedAt = now();
  void stayAwake(true); // the screen of a tablet goes dark otherwise
}

window.addEventListener("resize", redraw);
await openScreen(root, {
  sceneOf: (state, me) => ({ state, me }), page, drawn, second, words: ["en", "en.sheets", "en.wall", "en.care"].map(openWords),
});
