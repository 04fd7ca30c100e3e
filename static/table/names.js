// How loads are named, so that two phones name the same one, and which pieces a press means.

import { free, indexIn, stepIn } from "./draft.js";
import { CAN_BE_ASSUMED_DONE, counted, piecesIn, remaining } from "./pieces.js";
import { sum } from "./record.js";

/** The step that a load's id names. */
export const stepOf = (load) => (load ?? "").split("/")[0];

/** The trays that a load's id names (a board's number is none). */
export function traysOf(load) {
  const text = load ?? "";
  return text.slice(text.indexOf("/") + 1).split(".")[0].split("+");
}

/** The pieces of a load that is not begun now and was counted before: a board in each of its trays, another in any. */
export function countedBefore(draft, run, load, step) {
  const fed = draft.run(run).boards?.[load];
  const trays = Object.keys(fed ?? draft._trays(run)).filter((tray) => draft.hasTray(run, tray)).map((tray) => draft.tray(run, tray));
  const found = trays.filter((tray) => tray.counts[step]?.[load]);
  if (!found.length || (fed && found.length < trays.length)) return null;
  return Object.fromEntries(found.map((tray) => [tray.id, sum(counted(tray, step, load))]));
}

/** Which pieces a press means: those it names, else those of the board, else what the tray has for this step. */
export function piecesWanted(draft, event, load, step) {
  const { body, run } = event;
  if (event.kind === "pieces counted") {
    const tray = draft.tray(run, event.tray);
    const more = body.good + piecesIn(body.scrap ?? []) - sum(counted(tray, step.key, load.id)) - remaining(load, tray);
    return { [event.tray]: more <= 0 ? free(tray, step.key) : more };
  }
  if (body.pieces && Object.keys(body.pieces).length) return positive(Object.entries(body.pieces));
  const counts = body.counts ?? {};
  if (Object.keys(counts).length && !counts["*"]) {
    const before = (tray) => sum(counted(draft.tray(run, tray), step.key, load.id));
    return positive(Object.entries(counts).map(([tray, count]) => [tray, count.good + piecesIn(count.scrap ?? []) - before(tray)]));
  }
  const board = draft.run(run).boards?.[load.id];
  if (board) return Object.fromEntries(Object.entries(board).map(([tray, pieces]) => [tray, Math.min(pieces, reach(draft, run, tray, step))]));
  let named = traysOf(load.id).filter((tray) => draft.hasTray(run, tray));
  if (!named.length && event.tray) named = [event.tray];
  return Object.fromEntries(named.map((tray) => [tray, capped(step, draft.tray(run, tray), reach(draft, run, tray, step))]));
}

const positive = (entries) => Object.fromEntries(entries.filter(([, pieces]) => pieces > 0));

function capped(step, tray, reached) {
  const there = free(tray, step.key) || reached;
  return Math.min(there, step.load_pieces ?? there);
}

/** How many pieces of a tray could be at a step if what was not pressed before is taken as done. */
function reach(draft, run, trayKey, step) {
  const tray = draft.tray(run, trayKey);
  const route = draft.routeOf(run, trayKey);
  const index = indexIn(route, step.key);
  let there = sum(route.slice(0, index + 1).map((step) => free(tray, step.key)));
  for (const load of draft.openLoads(run)) {
    const known = stepIn(route, load.step) && indexIn(route, load.step) < index;
    if (known && CAN_BE_ASSUMED_DONE.includes(load.state)) there += remaining(load, tray);
  }
  return there;
}
