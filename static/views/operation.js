// What an operation asks first: its start list, and the press that starts a machine.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { open } from "../door/later.js";
import { about, isListed, noteListed, press, startMachine } from "../door/press.js";
import { say } from "../door/words.js";
import { listOf, wantsList } from "./doing.js";
import { button, stepper } from "./sheet.js";

const said = new Map();

export const minutesFor = ({ load, step }) => said.get(`${load.run}/${load.id}`) ?? Math.max(1, Math.round(load.stop?.left_minutes ?? step?.minutes?.machine ?? 10));
const sayMinutes = ({ load }, minutes) => said.set(`${load.run}/${load.id}`, minutes);

export const minutesStepper = (here) =>
  stepper(say("ui-runs-about"), minutesFor(here), { min: 1, max: 2000, unit: say("ui-min"), set: (minutes) => sayMinutes(here, minutes) });

const starts = (here) => (before, materials = []) => startMachine(here.load, minutesFor(here), materials.length ? { body: { materials } } : {}, before);

/** The big button of a loaded machine. The full start list comes before it where it is wanted; after that one press a
 *  load says that all is as it was listed. */
export function runPress(here, person) {
  const points = listOf(here).length;
  const run = starts(here);
  const name = { station: here.station?.name ?? "" };
  return wantsList(here, person) ? button(say("go-list-then-run", { points }), () => open("start list", here, run, "list-run"), "go")
    : points ? button(say("go-listed-running", name), () => run([listed(here, "short")]), "go")
      : button(say("go-running", name), () => run(), "go");
}

/** The same with about how long it runs. */
export const runButton = (here, person) => html`${minutesStepper(here)}${runPress(here, person)}`;

/** The list of a load that is only to be said to be as it was listed: one press shows it, to be ticked anew. */
export const toSee = (here, person) =>
  (["loading", "working"].includes(here.load.state) && here.station?.start && !isListed(here.load) && !wantsList(here, person)
    ? button(say("go-see-list"), () => (here.load.state === "loading" ? open("start list", here, starts(here), "list-run") : open("start list", here)), "quiet") : nothing);

/** By hand at a cutter there is no press that starts it: the list is said once more before the load is done. */
export const listedButton = (here) =>
  button(say("go-listed"), () => { noteListed(here.load); press(say("did-list", { station: here.station.name }), [listed(here, "short")]); }, "go");

/** The event that says that the list was gone through: in full with its points, or once more in short. */
export const listed = ({ load }, list, items) => ({ kind: "checklist ticked", ...about(load), body: { list, ...(items ? { items } : {}) } });
