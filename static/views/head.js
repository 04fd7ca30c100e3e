// The head of Now (run, due, who you are) and its foot in reach of the thumb (last press, undo, what was refused).

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "../door/clock.js";
import { dismiss, notSaved, onlyHere, outboxTrouble, pressState, refused, storageFull, waiting } from "../door/outbox.js";
import { forget, lastPress, undo } from "../door/press.js";
import { become, me, serverReached, shop } from "../door/shop.js";
import { lineWords, list, loadTitle, say, sayCode, sayLater, sayRefused, slug, stepOf, wishFor } from "../door/words.js";
import { button } from "./sheet.js";

export function header({ state, me, run }) {
  return html`
    <header class="run">
      <div class="run-words"><b>${run?.name ?? state.shop?.name ?? ""}</b></div>
      ${youAre(state, me)}
      ${run ? dueWords(run, state.plan?.done?.[run.id]) : nothing}
    </header>
    ${serverReached() ? nothing : html`<div class="notice" role="status"><p>${say("ui-no-server")}</p>${howItWorks()}</div>`}
    ${outboxTrouble() === "pair" ? html`<div class="notice" role="alert"><p>${say("ui-pair")}</p><a class="button full" href="/pair">${say("ui-pair-go")}</a></div>` : nothing}
    ${notSaved() ? html`<p class="notice" role="alert">${notSaved()}</p>` : nothing}
    ${storageFull() ? fullStorage() : nothing}`;
}

/** The way to the help, where the page can be opened again without the server: else whoever follows it has lost the page. */
const howItWorks = () => (navigator.serviceWorker?.controller ? html`<a class="button quiet full" href="/help#away">${sayLater("en.sheets", "ui-how")}</a>` : nothing);

/** This phone stores nothing: which presses would be lost with the page. */
function fullStorage() {
  const lost = new Map(onlyHere().map((entry) => [entry.press, entry.label]));
  return html`<div class="notice" role="alert"><p>${say("ui-storage-full")}</p>
    ${lost.size ? html`<p>${say("ui-only-here")}</p><ul>${[...lost.values()].map((label) => html`<li>${label}</li>`)}</ul>` : nothing}</div>`;
}

// What people look for comes first: when it is done.
function doneWords(run, planned) {
  const words = run.ready_at ? say("head-all-by", { by: run.ready_at }) : planned ? say("head-done", { at: planned }) : "";
  return words ? html`<b>${words}</b>` : nothing;
}

function dueWords(run, planned) {
  const open = (run.orders ?? []).filter((order) => (order.good ?? 0) < order.pieces);
  const dated = open.filter((order) => order.due);
  const late = dated.filter((order) => millis(order.due) <= now());
  const next = dated.filter((order) => !late.includes(order)).map((order) => millis(order.due)).sort((one, other) => one - other)[0];
  // All lines of one moment are one number.
  const lines = (run.orders ?? []).filter((order) => order.due && millis(order.due) === next);
  const total = (name) => lines.reduce((sum, order) => sum + (order[name] ?? 0), 0);
  const parts = [];
  // Where all are due at one moment, one number says both.
  if (total("pieces") !== run.wanted) parts.push(say("head-good", { good: run.good ?? 0, wanted: run.wanted ?? 0 }));
  if (late.length) parts.push(say("head-late", { who: list(late.map(lineWords)) }));
  if (lines.length) parts.push(say("head-due", { good: total("good"), pieces: total("pieces"), due: lines[0].due }));
  const done = doneWords(run, planned);
  return html`<p class="run-rest">${done}${done !== nothing && parts.length ? " · " : ""}${parts.join(" · ")}</p>`;
}

function youAre(state, me) {
  const people = Object.entries(state.people ?? {}).filter(([, person]) => !person.removed);
  if (people.length < 2) return nothing;
  if (people.length > 2) {
    return html`<label class="you"><span class="unseen">${say("ui-you-are")}</span>
      <select @change=${(event) => become(event.target.value)}>${people.map(([key, person]) => html`<option value=${key} ?selected=${key === me}>${person.name}</option>`)}</select></label>`;
  }
  return html`<div class="you" role="group" aria-label=${say("ui-you-are")}>
    ${people.map(([key, person]) => html`<button type="button" aria-pressed=${String(key === me)} @click=${() => become(key)}>${person.name}</button>`)}
  </div>`;
}

/** Presses that were refused, each with its sentence, until they are read. */
export function refusals() {
  const presses = new Map(refused().map((entry) => [entry.press, entry]));
  if (!presses.size) return nothing;
  wishFor("en.sheets"); // the sentences of refusals
  return html`<div role="alert">${[...presses.values()].map((entry) => html`<section class="panel look">
    <p><b>${say("press-refused", { what: entry.label })}</b></p><p>${whyRefused(entry)}</p>
    ${button(say("press-read"), () => { forget(entry.press); void dismiss(entry.press); }, "full")}</section>`)}</div>`;
}

// What was pressed for somebody else is said of them, where there is such a sentence.
const whyRefused = ({ event, refused: why }) =>
  (event.person !== me() && why.facts?.person && sayCode("refused", `elses ${why.code}`, why.facts)) || sayRefused(why);

/** The foot: the big button, where there is one (quiet while a question `waits` above), then the last press and its way back. */
export function foot(big = nothing, waits = false) {
  const last = pressed();
  return big === nothing && last === nothing ? nothing : html`<footer class="last ${waits ? "waits" : ""}">${big}${last === nothing ? nothing : html`<div>${last}</div>`}</footer>`;
}

/** 'On another phone: finished Sand 120, tray 7' */
function elsewhere({ id }) {
  const { last_press: entry, runs } = shop() ?? {};
  const what = entry?.id === id && sayLater("en.sheets", `kind-${slug(entry.kind)}`);
  const run = runs?.[entry?.run];
  const load = run?.loads?.[entry.load];
  const of = load ? loadTitle(run, load) : stepOf(run, entry?.step)?.name ?? "";
  return what ? sayLater("en.sheets", "press-elsewhere-what", { what, of }).trim() : say("press-elsewhere");
}

function pressed() {
  const last = lastPress();
  const unsent = new Set(waiting().map((entry) => entry.press)).size;
  if (!last) return unsent ? html`<span>${say("press-unsent", { count: unsent })}</span>` : nothing;
  const label = last.label || elsewhere(last);
  const state = last.label ? pressState(last.id) : "sent";
  if (state === "refused") return html`<span><b>${say("press-refused", { what: label })}</b></span>`;
  return html`<span><b>${label}</b><span class="soft">${last.label ? say(`press-${state.replace(" ", "-")}`) : ""}${unsent > 1 ? ` · ${say("press-unsent", { count: unsent })}` : ""}</span></span>
    <button type="button" @click=${() => undo(last, say("did-undo", { what: label }))} aria-label=${say("ui-undo-what", { what: label })}>${say("ui-undo")}</button>`;
}
