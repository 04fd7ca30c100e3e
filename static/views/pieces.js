// Where the pieces of a tray are: at which step, in which load, and what was scrap.

import { routeOf } from "../door/words.js";

const indexOf = (steps, key) => steps.findIndex((step) => step.key === key);

/** The steps of a tray's route up to and with this one; none where the route has no such step. */
export function stepsTo(run, tray, key) {
  const steps = routeOf(run, tray);
  return steps.slice(0, indexOf(steps, key) + 1);
}

/** The step that follows on this one. */
export function stepAfter(run, tray, key) {
  const steps = routeOf(run, tray);
  return steps[indexOf(steps, key) + 1];
}

/** How many pieces of a tray are at this step or before it. */
export const piecesTo = (run, tray, key) =>
  stepsTo(run, tray, key).reduce((total, step) => total + (run.trays[tray]?.at?.[step.key] ?? 0), 0);

/** The begun load that holds pieces of a tray at a step, if there is one. */
export const loadWith = (run, tray, key) =>
  Object.values(run.loads ?? {}).find((load) => load.step === key && load.pieces?.[tray] && !["done", "off"].includes(load.state));

/** [good, scrap] counted so far of a tray in a load. */
export const countedOf = (run, tray, { step, id }) => run.trays?.[tray]?.counts?.[step]?.[id] ?? [0, 0];

/** What was counted as scrap of a tray in a load, as an event says it again. */
export const scrapOf = (run, tray, { step, id }) =>
  (run.trays[tray]?.scrap?.[step] ?? []).filter((reason) => reason.load === id).map(({ load: _, ...reason }) => reason);
