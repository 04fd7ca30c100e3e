// 'The CNC is running': the press that starts a machine's time, with the estimate made adjustable.

import { html } from "../vendor/lit-html-3.3.3.js";
import { wantsList } from "./doing.js";
import { startMachine } from "./presses.js";
import { openStartList } from "./startlist.js";
import { stepper } from "./controls.js";
import { say } from "./words.js";

const said = new Map();

export const minutesFor = ({ load, step }) => said.get(`${load.run}/${load.id}`) ?? Math.max(1, Math.round(step?.minutes?.machine ?? 10));
const sayMinutes = ({ load }, minutes) => said.set(`${load.run}/${load.id}`, minutes);

export const minutesStepper = (here) =>
  stepper(say("ui-runs-about"), minutesFor(here), { min: 1, max: 2000, unit: say("ui-min"), set: (minutes) => sayMinutes(here, minutes) });

/** The big button of a loaded machine; the full start list comes before it where it is wanted. */
export function runButton(here) {
  const { load, step, station } = here;
  const run = () => startMachine(load, minutesFor(here));
  const action = wantsList(here) ? () => openStartList(here, (before) => startMachine(load, minutesFor(here), {}, before)) : run;
  return html`${minutesStepper(here)}
    <button type="button" class="go" @click=${action}>${wantsList(here) ? say("go-list-then-run", { points: step.checklist.length }) : say("go-running", { station: station?.name ?? "" })}</button>`;
}
