// Every step of the run with its start list, setup sheet, first-piece checks and cautions: to be read without the server.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { careText, cautions } from "../views/cautions.js";
import { listOf } from "../views/doing.js";
import { say, stationName } from "../door/words.js";

/** The route of a run, folded; where it was changed on the way, each of its revisions. */
export const steps = (scene) => html`<details><summary>${say("trays-steps")}</summary>
  ${scene.run.routes.map((route) => html`
    ${scene.run.routes.length > 1 ? html`<h2>${say("trays-steps-from", { tray: route.from_tray })}</h2>` : nothing}
    ${route.steps.map((step, index) => oneStep(scene.state, step, index + 1, route.steps.length))}`)}</details>`;

const oneStep = (state, step, number, all) => html`<details>
  <summary>${say("trays-step", { number, all, step: step.name, station: stationName(state, step.station) })}</summary>
  ${cautions(step)}
  ${listed("details-list", pointsOf(state, step))}
  ${step.setup_sheet?.length ? html`<h3>${say("details-sheet")}</h3>
    <dl class="pairs">${step.setup_sheet.map(([label, text]) => html`<div><dt>${label}</dt><dd>${text}</dd></div>`)}</dl>` : nothing}
  ${listed("details-first-piece", step.checks?.map((check) => check.text))}
  ${step.care?.length || pointsOf(state, step).length || step.setup_sheet?.length || step.checks?.length ? nothing : html`<p>${say("trays-step-bare")}</p>`}
</details>`;

const pointsOf = (state, step) => listOf({ step, station: state.stations?.[step.station] }).map(({ key, text }) => (key ? careText(key) : text));

const listed = (title, points) =>
  points?.length ? html`<h3>${say(title)}</h3><ul>${points.map((point) => html`<li>${point}</li>`)}</ul>` : nothing;
