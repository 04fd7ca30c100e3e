// What a person is in the middle of, and what comes first: read from the state, never ranked here.

import { millis, minutesTo, now, today } from "./clock.js";
import { stepOf } from "./words.js";

export const loadAt = (state, at) => (at ? state.runs?.[at[0]]?.loads?.[at[1]] : undefined);

/** What a person's hands are at: {job} or {run, runId, load, step}, or null. */
export function handsOf(state, person) {
  const hands = state.people?.[person]?.hands;
  if (!hands) return null;
  if (!hands[0]) return { job: { key: hands[1], ...state.jobs?.[hands[1]] } };
  const load = loadAt(state, hands);
  return load ? loadScene(state, load) : null;
}

export function loadScene(state, load) {
  const run = state.runs[load.run];
  return { run, load, step: stepOf(run, load.step, Object.keys(load.pieces ?? {})[0]), station: state.stations?.[load.station] };
}

export const openLoads = (state) =>
  Object.values(state.runs ?? {}).flatMap((run) => Object.values(run.loads ?? {})).filter((load) => !["done", "off"].includes(load.state));

/** A load that nobody's hands are at while it wants them: it still holds its station. */
export const isPutAside = (load) => ["loading", "working", "unloading"].includes(load.state) && !load.people?.length;

/** Watched machines that run under this person's eyes. */
export const watchedBy = (state, person) =>
  openLoads(state).filter((load) => load.state === "running" && isWatched(state, load) && (!load.watcher || load.watcher === person));

export const isWatched = (state, load) => loadScene(state, load).step?.attendance === "watched";

/** Moves that are still open: a load that has since been begun or ended here is no move any more. */
export function openMoves(state, person) {
  const hands = state.people?.[person]?.hands?.join("\n");
  return (state.moves ?? []).filter((move) => {
    if (["start", "wipe"].includes(move.code)) return !loadAt(state, [move.run, move.load]) && !finished(state, move);
    if (["go on", "run", "unload", "finish", "settle"].includes(move.code)) {
      const load = loadAt(state, [move.run, move.load]);
      return load && `${load.run}\n${load.id}` !== hands && fits(move.code, load);
    }
    return true;
  });
}

// The overlay leaves a done load in the state; the server leaves it out.
const finished = (state, move) => state.runs?.[move.run]?.loads?.[move.load]?.state === "done";

const fits = (code, load) =>
  ({ "go on": ["loading", "working", "unloading"], run: ["loading", "stopped"], unload: ["running", "ended"], finish: ["working", "unloading"], settle: ["stopped"] })[code].includes(load.state);

/** The move that follows what I am at: the first one that begins something. */
export const nextMove = (moves) => moves.find((move) => ["start", "wipe", "go on", "unload"].includes(move.code));

/** The full start list: once a day, and again after any change at the station. */
export const wantsList = ({ load, step, station }) =>
  Boolean(step?.checklist?.length && (load.fresh || station?.listed !== `${today()}|${station?.setups ?? 0}`));

/** How the first piece of a step stands: 'pass', 'fail', or '' while a check is still open. */
export function firstPiece({ run, load, step, station }) {
  const scopes = { run: "run", load: load?.id ?? "", setup: `${station?.setups ?? 0}|${today()}` };
  const results = (step.checks ?? []).map((check) => run.first_pieces?.[`${step.key}|${scopes[check.per ?? "setup"]}|${check.key}`] ?? "");
  if (results.includes("fail")) return "fail";
  return results.includes("") ? "" : "pass";
}

export const inSession = (state, person) => {
  const one = state.people?.[person];
  return Boolean(one?.until && minutesTo(one.until) > -6 * 60 && one.came_at && now() - millis(one.came_at) < 18 * 3_600_000);
};

/** Alerts whose moment is past and that nobody answered, oldest first. What was past for the server is past, though the
 *  clock here may be a few milliseconds behind. */
export function ringing(state) {
  const here = Math.max(now(), millis(state.now) || 0);
  return (state.dues ?? []).filter((due) => millis(due.due_at) <= here && !state.answers?.[due.id]).sort((one, other) => millis(one.due_at) - millis(other.due_at));
}

export const nextDue = (state) =>
  Math.min(...(state.dues ?? []).filter((due) => millis(due.due_at) > now() && !state.answers?.[due.id]).map((due) => millis(due.due_at)));

/** Alerts that concern this page: a session's end only its own person. */
export const alertsFor = ({ state, me }) => ringing(state).filter((due) => due.kind !== "session end" || due.person === me);

/** A missed look at a watched machine comes before every question. */
export const isDanger = (due) => due.kind === "watch check";

/** The estimated end of a machine is past. */
export const isOverdue = (load) => load.state === "running" && load.end_at && minutesTo(load.end_at) <= 0;

/** Rests that pass by themselves now: [{run, tray, step, rest}] by the moment they are over. */
export function resting(state) {
  const found = [];
  for (const run of Object.values(state.runs ?? {})) {
    for (const tray of Object.values(run.trays ?? {})) {
      for (const [key, rest] of Object.entries(tray.rests ?? {})) {
        if (!rest.ended_at) found.push({ run, tray, step: stepOf(run, key, tray.id), rest });
      }
    }
  }
  return found.sort((one, other) => millis(one.rest.latest_at ?? one.rest.ready_at) - millis(other.rest.latest_at ?? other.rest.ready_at));
}
