// What an operation asks first: its start list, and the press that starts a machine.

import { html, live } from "../vendor/lit-html-3.3.3.js";
import { listOf, wantsList } from "./doing.js";
import { openStartList } from "../door/later.js";
import { about, startMachine } from "../door/press.js";
import { stepper } from "./sheet.js";
import { recall, remember } from "../door/remembered.js";
import { me } from "../door/shop.js";
import { say } from "../door/words.js";

export const toggle = (set, value) => (set.has(value) ? set.delete(value) : set.add(value));

export const tick = (words, on, change, barred = false) =>
  html`<label class="tick"><input type="checkbox" .checked=${live(on)} ?disabled=${barred} @change=${change}><span>${words}</span></label>`;

const said = new Map();

export const minutesFor = ({ load, step }) => said.get(`${load.run}/${load.id}`) ?? Math.max(1, Math.round(load.stop?.left_minutes ?? step?.minutes?.machine ?? 10));
const sayMinutes = ({ load }, minutes) => said.set(`${load.run}/${load.id}`, minutes);

export const minutesStepper = (here) =>
  stepper(say("ui-runs-about"), minutesFor(here), { min: 1, max: 2000, unit: say("ui-min"), set: (minutes) => sayMinutes(here, minutes) });

/** The big button of a loaded machine. The full start list comes before it where it is wanted; after that one press a
 *  load says that all is as it was listed. */
export function runButton(here) {
  const { load, station } = here;
  const points = listOf(here).length;
  const run = (before, materials = []) => startMachine(load, minutesFor(here), materials.length ? { body: { materials } } : {}, before);
  const name = { station: station?.name ?? "" };
  if (wantsList(here, me())) return button(here, () => openStartList(here, run, "list-run"), say("go-list-then-run", { points }));
  if (points) return button(here, () => run([listed(here, "short")]), say("go-listed-running", name));
  return button(here, () => run(), say("go-running", name));
}

const button = (here, action, words) => html`${minutesStepper(here)}<button type="button" class="go" @click=${action}>${words}</button>`;

/** The event that says that the list was gone through: in full with its points, or once more in short. */
export const listed = ({ load }, list, items) => ({ kind: "checklist ticked", ...about(load), body: { list, ...(items ? { items } : {}) } });

const LISTED = "runboard.listed";
const KEPT = 20;
const keyOf = ({ run, id }) => `${run}/${id}`;
const remembered = () => JSON.parse(recall(LISTED) ?? "[]");

/** Whether it was said on this phone that all is as listed for a load by hand at a cutter. */
export const isListed = (load) => remembered().includes(keyOf(load));
export const noteListed = (load) => remember(LISTED, JSON.stringify([...remembered(), keyOf(load)].slice(-KEPT)));
