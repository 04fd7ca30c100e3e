// What dries, cures or stands in clamps: by the moment it is over, trays that came through the same step together as one.

import { millis, minutesTo, moment, now } from "../door/clock.js";
import { inOrder, list, say, stepOf } from "../door/words.js";

/** Waits that pass by themselves now: [{run, step, rest, tray, trays}] by the moment they must be over by, of those that
 *  `matter({run, tray, step, rest})`. */
export function waiting(state, matters) {
  const all = Object.values(state.runs ?? {}).flatMap((run) => Object.values(run.trays ?? {}).flatMap((tray) =>
    Object.entries(tray.rests ?? {}).filter(([, rest]) => !rest.ended_at).map(([key, rest]) => ({ run, tray, step: stepOf(run, key, tray.id), rest }))));
  const rows = new Map();
  for (const wait of all.sort((wait, other) => endOf(wait) - endOf(other)).filter(matters)) {
    const key = [wait.run.id ?? wait.run.name, wait.step?.key, moment(wait.rest.ready_at), moment(wait.rest.latest_at ?? NaN)].join("|");
    const row = rows.get(key) ?? rows.set(key, { ...wait, trays: [] }).get(key);
    row.trays.push(wait.tray.id);
  }
  return [...rows.values()];
}

const endOf = ({ rest }) => millis(rest.latest_at ?? rest.ready_at);

export const isReady = ({ rest }) => millis(rest.ready_at) <= now();

/** What stands in a row of them: the words, the moment, and whether the latest end is near. */
export const waitWords = ({ rest, trays, step }) => say(`wait-${rest.why}`, { trays: list(inOrder(trays)), count: trays.length, step: step?.name ?? "" });
export const isLate = ({ rest }) => Boolean(rest.latest_at && minutesTo(rest.latest_at) < 15);
