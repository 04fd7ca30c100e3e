// The helper's page: one tray's current step, drawn from the server's words.

import { html, nothing, render } from "../vendor/lit-html-3.3.3.js";
import { millis, now, offsetMs, timeOfDay } from "../door/clock.js";
import { dismiss, notSaved, openOutbox, onlyHere, pressState, refused, waiting } from "../door/outbox.js";
import { LOUD, resumeSound, shake, tone } from "../door/sound.js";
import { wrongClock } from "../door/wrong_clock.js";
import { button, notice, own, signs } from "./parts.js";
import { onSheet, openCheck, openCount, openRun, openWrong, sheet, withBad } from "./sheets.js";
import { ended, forgetPress, lastPress, nextLook, onTray, openTray, press, serverReached, standing, tray, undo } from "./tray.js";

const RING_MS = 5000;
const MISSED_MS = 60_000;
const UNDO_MS = 12 * 3_600_000;
// What a machine does stands above what the hands do.
const AT_ONCE = ["running", "ended", "stopped", "done"];
// Where there is a first piece in hand.
const CHECKED = ["working", "ended", "unloading"];
const root = document.getElementById("helper");
const title = document.title;
let first = true;

const does = (offer) => () =>
  ({ run: () => openRun(offer), count: () => openCount(offer) })[offer.do]?.() ?? (offer.do === "press" ? press(offer.label, offer.drafts) : undefined);

function page(state) {
  const stand = standing();
  const look = nextLook(stand);
  const due = look && now() >= look.due ? look : null;
  const view = state.views?.[stand.at];
  return html`${head(state)}${refusals(state)}${offline(state)}
    ${due ? watch(state, due) : nothing}
    ${state.calls.map((text) => html`<p class="note calls" role="status">${text}</p>`)}
    ${state.notices.map(notice)}
    ${view && AT_ONCE.includes(stand.at) ? work(state, stand, view) : nothing}
    ${state.step ? [watchFor(state), instructions(state)] : nothing}
    ${view && !AT_ONCE.includes(stand.at) ? work(state, stand, view) : nothing}
    ${wrongClock((id) => (id === "press-read" ? state.words.ok : state.words["clock-wrong"]), draw)}
    <p class="emergency">${state.emergency}</p>
    ${pressed(state)}
    ${bar(state, stand, view)}`;
}

const head = ({ step, title: name, run }) => step
  ? html`<p class="line"><span><b>${name}</b>, ${run}</span><span>${step.line}</span></p>
    <h1 tabindex="-1" lang=${step.lang ?? nothing}>${step.name}</h1><p class="place">${[step.place, step.pieces].filter(Boolean).join(" · ")}</p>`
  : html`<p class="line"><span>${run}</span></p><h1 tabindex="-1">${name}</h1>`;

const watchFor = ({ step, words }) => step.cautions.length ? html`<section><h2 class="unseen">${words["watch-for"]}</h2>
  <ul class="watch-for">${step.cautions.map((caution) => html`<li>${signs(caution.signs)}${own(caution)}</li>`)}</ul></section>` : nothing;

const instructions = ({ step, words }) => html`<section><h2>${words["what-to-do"]}</h2>
    <ol class="do-this">${step.instructions.map((instruction) => html`<li class=${step.instructions.length > 1 ? "" : "only"}>${own(instruction)}
      ${instruction.picture ? html`<img src=${instruction.picture} alt="">` : nothing}</li>`)}</ol></section>
  ${rows(words.texts, step.texts)}${rows(words.setup, step.setup)}
  ${step.wait ? html`<p class="note">${step.wait}</p>` : nothing}`;

const rows = (words, found) => found.length ? html`<section><h2>${words}</h2>
  <dl class="positions">${found.map(([label, text, lang]) => html`<dt lang=${lang || nothing}>${label}</dt><dd lang=${lang || nothing}>${text}</dd>`)}</dl></section>` : nothing;

/** How it stands, the first pieces to check, and the presses beside the big one. */
function work(state, { at }, view) {
  const overdue = isOverdue(state, at);
  const checks = CHECKED.includes(at) ? state.checks : [];
  const { others } = offered(state, at, view);
  return html`<section class="work"><h2>${view.heading}</h2>
    ${overdue ? html`<p class="note look">${state.words["running-overdue"]}</p>` : nothing}${view.text ? html`<p>${view.text}</p>` : nothing}
    ${checks.length ? html`<p>${state.words["first-piece"]}</p>` : nothing}
    <div class="presses">${checks.map((check) => button(html`${own(check)}${check.limits ? `: ${check.limits}` : ""}`, () => openCheck(check), "full"))}
    ${others.map((other) => button(other.words, does(other), "full"))}</div></section>`;
}

const isOverdue = (state, at) => Boolean(at === "running" && state.at === "running" && state.end_at && now() > millis(state.end_at));

/** The presses of a view, the big one and the others; while it is known that they would not be taken, what helps instead. */
function offered(state, at, view) {
  if (state.blocked && at === state.at) return { big: state.show, others: [] };
  const presses = view?.presses ?? [];
  // That it has ended is no big press before its time.
  const small = presses[0]?.small || (at === "running" && !isOverdue(state, at));
  return small ? { big: null, others: presses } : { big: withBad(presses[0]), others: presses.slice(1) };
}

/** Under the thumb: the one big press, and what is wrong. */
function bar(state, { at }, view) {
  const { big } = offered(state, at, view);
  return html`<div class="bar last"><div>${big ? button(big.words, does(big), "go") : nothing}
    <div class="pair">${button(state.words["go-wrong"], openWrong)}${state.show && big === state.show ? nothing : button(state.call.words, does(state.call))}</div></div></div>`;
}

function watch(state, { due, check }) {
  const watch = state.watch;
  const missed = now() >= due + MISSED_MS;
  const looked = () => press(watch.label, [{ kind: "watch checked", body: { at_check: check } }]);
  return html`<section class="watch ${missed ? "missed" : ""}" role="alert"><p><b>${watch.sentence}</b></p>
    ${button(watch.words, looked, "go")}<p class="foot">${watch.note}</p></section>`;
}

const offline = ({ words }) => serverReached() ? (notSaved() ? html`<p class="note look" role="status">${notSaved()}</p>` : nothing)
  : html`<p class="note look" role="status">${words.offline}</p>`;

const refusals = ({ words }) => [...new Map(refused().map((entry) => [entry.press, entry])).values()].map((entry) => html`<div class="refusal" role="alert">
  <p><b>${entry.label}: ${words.refused}</b></p><p>${entry.refused.sentence}</p>
  ${button(words.ok, () => { if (lastPress()?.id === entry.press) forgetPress(); void dismiss(entry.press); })}</div>`);

function pressed({ words }) {
  const last = lastPress();
  if (!last || Date.now() - last.at > UNDO_MS) return nothing;
  const how = pressState(last.id);
  if (how === "refused") return nothing;
  const said = { "saved here": words.saved, "only here": words["only-here"], sent: words.sent }[how];
  return html`<p class="pressed"><span><b>${last.label}</b> ${timeOfDay(last.at + offsetMs())}, ${said}</span>${button(words.undo, () => undo(last, words["did-undo"]), "quiet")}</p>`;
}

const over = (sentence) => html`<h1 tabindex="-1">${sentence}</h1>
  ${waiting().length || onlyHere().length ? html`<p class="note">${tray()?.words.kept}</p>` : nothing}`;

function draw() {
  const state = tray();
  if (!state && !ended()) return;
  if (first) root.replaceChildren();
  first = false;
  document.querySelector("footer.end").hidden = Boolean(ended());
  render(ended() ? over(ended()) : sheet() ?? page(state), root);
}

let rang = 0;

// Rings now and then while somebody is wanted, the louder the later.
function ring(louder) {
  if (Date.now() - rang < (louder ? RING_MS / 2 : RING_MS)) return;
  rang = Date.now();
  shake(louder ? [600, 150, 600] : [300, 120, 300]);
  tone(LOUD, louder ? 0.9 : 0.4);
}

/** What fell due rings, and says so in the title. */
function second() {
  if (tray() && !ended()) {
    const look = nextLook(standing());
    const due = look && now() >= look.due;
    if (due) ring(now() >= look.due + MISSED_MS);
    document.title = due ? `▲ ${tray().watch.sentence}` : title;
  }
  draw();
}

root.addEventListener("click", (event) => {
  void resumeSound();
  // A glove presses twice: the second press of one gesture must not end what the first has begun.
  if (event.detail > 1 && event.target.closest(".go")) event.stopPropagation();
}, { capture: true });

onSheet(draw);
onTray(draw);
await openOutbox();
await openTray();
setInterval(second, 1000);
