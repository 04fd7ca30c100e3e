// Handing over: who has what, who was shown which station, and a helper's first piece, which waits for the lead's look.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { about, press } from "../door/press.js";
import { inOrder, list, personName, say, stationName, stepOf, trayWords } from "../door/words.js";
import { oneOf } from "./controls.js";
import { givenOf, isLead } from "./doing.js";
import { piecesTo } from "./pieces.js";
import { button, goButton, openSheet, sheetHead } from "./sheet.js";

/** For the person to whom it was given with a look: the first piece is shown before the load is done. */
export function showFirst({ state, me }, { run, load, step }) {
  const tray = inOrder(Object.keys(load.pieces)).find((id) => run.given?.[`${load.step}|${id}`]?.look && run.looks?.[`${load.step}|${id}`] !== "pass");
  if (!tray || givenOf(run, load.step, [tray])?.to !== me) return nothing;
  const called = Object.values(state.calls ?? {}).some((call) => call.why === "look" && call.person === me && call.run === load.run && call.tray === tray && call.step === load.step);
  const show = () => press(say("did-show-first", { step: step.name }), [{ kind: "lead called", ...about(load), load: "", tray, body: { why: "look" } }]);
  if (called) return html`<p class="given" role="status"><b>${say("look-called")}</b></p>`;
  return html`${run.looks?.[`${load.step}|${tray}`] === "fail" ? html`<p class="given"><b>${say("look-failed")}</b></p>` : nothing}
    ${button(say("look-show"), show, "go")}`;
}

/** 'Kim has Fit hooks on trays 1 to 3', for everybody; each person with the stations they were shown, for the lead. */
export function handedOver({ state, me, runs }) {
  const rows = runs.flatMap((run) => rowsOf(state, me, run));
  const people = isLead(state, me) ? learners(state, me) : [];
  if (!rows.length && !people.length) return nothing;
  return html`${rows.length ? html`<section><h2>${say("given-title")}</h2><ul class="rows">${rows}</ul></section>` : nothing}
    ${people.length ? html`<details><summary>${say("shown-title")}</summary><ul class="rows">${people.map(([key, person]) => learner(state, key, person))}</ul></details>` : nothing}`;
}

function rowsOf(state, me, run) {
  const found = new Map();
  for (const [key, { to, look }] of Object.entries(run.given ?? {})) {
    const [step, tray] = key.split("|");
    if (!piecesTo(run, tray, step)) continue; // what is through at the step, or never comes to it, is nobody's any more
    const row = found.get(`${step}|${to}`) ?? found.set(`${step}|${to}`, { step, to, look: false, trays: [] }).get(`${step}|${to}`);
    row.trays.push(tray);
    row.look ||= look && run.looks?.[key] !== "pass";
  }
  return [...found.values()].map(({ step, to, look, trays }) => {
    const facts = { person: personName(state, to), step: stepOf(run, step, trays[0])?.name ?? step, trays: trayWords(trays) };
    return html`<li class="row"><span>${say(to === me ? "given-row-you" : "given-row", facts)}${look ? html`<br><span class="soft">${say("given-look")}</span>` : nothing}</span></li>`;
  });
}

// Machine training: 'shown how'

const learners = (state, me) => Object.entries(state.people ?? {}).filter(([key, person]) => key !== me && person.access !== "lead" && !person.removed);

function learner(state, key, person) {
  const known = (person.shown ?? []).map((station) => stationName(state, station));
  return html`<li class="row"><span><b>${person.name}</b><br><span class="soft">${known.length ? say("shown-known", { stations: list(known) }) : say("shown-nothing")}</span></span>
    ${button(say("shown-open"), () => openShown(key))}</li>`;
}

function openShown(key) {
  let station = "";
  openSheet(({ state }) => {
    const { name, shown = [] } = state.people[key];
    const left = shownFirst(state).filter(([id]) => !shown.includes(id));
    return html`${sheetHead(say("shown-sheet", { person: name }))}<p>${say("shown-about")}</p>
      ${left.length ? oneOf(say("ui-where"), left.map(([key, { name: words }]) => [key, words]), station, (picked) => { station = picked; }) : html`<p>${say("shown-all")}</p>`}
      ${goButton(say("shown-go", { person: name, station: station ? stationName(state, station) : "…" }), () => press(...shownHow(state, key, station)), !station)}`;
  });
}

/** The stations that a helper is shown before they begin: whatever is done there, or for a step that a run has there. */
function shownFirst({ stations = {}, runs = {} }) {
  const steps = Object.values(runs).flatMap((run) => run.routes ?? []).flatMap((route) => route.steps);
  return Object.entries(stations).filter(([id, station]) => station.shown_first || steps.some((step) => step.station === id && step.shown_first));
}

const shownHow = (state, key, station) => [
  say("did-shown", { person: personName(state, key), station: stationName(state, station) }),
  [{ kind: "shown how", station, body: { person: key } }],
];

/** On a load's sheet: a press for each person who was not shown this station yet. */
export const shownButtons = ({ state, me }, station) =>
  (isLead(state, me) ? learners(state, me) : []).filter(([, person]) => !(person.shown ?? []).includes(station))
    .map(([key, person]) => button(say("shown-go", { person: person.name, station: stationName(state, station) }), () => press(...shownHow(state, key, station))));
