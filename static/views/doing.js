// What a person is in the middle of, and what comes first: read from the state, never ranked here.

import { millis, minutesTo, now, today } from "../door/clock.js";
import { serverReached } from "../door/shop.js";
import { stepOf, stepOfLoad } from "../door/words.js";

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
  return { run, load, step: stepOfLoad(run, load), station: state.stations?.[load.station] };
}

export const openLoads = (state) =>
  Object.values(state.runs ?? {}).flatMap((run) => Object.values(run.loads ?? {})).filter((load) => !["done", "off"].includes(load.state));

/** A load that nobody's hands are at while it wants them: it still holds its station. */
export const isPutAside = (load) => ["loading", "working", "unloading"].includes(load.state) && !load.people?.length;

/** Machines that a press which did not fit says to run. */
export const saidRunning = (state) => Object.values(state.said_running ?? {});

/** Watched machines that run under this person's eyes. */
export const watchedBy = (state, person) =>
  [...openLoads(state), ...saidRunning(state)].filter((load) => load.state === "running" && isWatched(state, load) && (!load.watcher || load.watcher === person));

export const isWatched = (state, load) => Boolean(load.said) || (loadScene(state, load).step?.attendance ?? "watched") === "watched";

/** Who watches a running load, as far as anybody does: they are here, and were not last seen elsewhere. */
export function watcherOf(state, load) {
  const one = state.people?.[load.watcher];
  const gone = !one?.came_at || one.away || (load.alone_since && millis(load.alone_since) <= now());
  return gone ? "" : load.watcher;
}

/** Moves that are still open: a load that has since been begun or ended here is no move any more. */
export function openMoves(state, person) {
  const hands = state.people?.[person]?.hands?.join("\n");
  return (state.moves ?? []).filter((move) => {
    if (["start", "wipe"].includes(move.code)) return !loadAt(state, [move.run, move.load]) && !finished(state, move);
    if (["go on", "run", "unload", "finish", "settle"].includes(move.code)) {
      const load = loadAt(state, [move.run, move.load]);
      return load && `${load.run}\n${load.id}` !== hands && fits(move.code, load);
    }
    if (move.code === "take over") {
      const load = loadAt(state, [move.run, move.load]);
      return load?.state === "running" && load.watcher !== person;
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

/** What is ticked before a machine starts: the catalogue's points for the station, then the operation's own. */
export const listOf = ({ step, station }) => [...(station?.start ?? []).map((key) => ({ key })), ...(step?.checklist ?? []).map((text) => ({ text }))];

/** The full start list: once a session, and again after any change at the station or for another person. */
export const wantsList = (here, person) =>
  Boolean(listOf(here).length && (here.load.fresh || asksMaterial(here) || here.station?.listed !== `${today()}|${here.station?.setups ?? 0}|${person}`));

// Under a machine that heats: what nobody named, or whose data sheet nobody looked at.
const asksMaterial = ({ run, load, station }) => Boolean(station?.heats) && Object.keys(load.pieces ?? {}).some((tray) => {
  const wood = run.trays?.[tray]?.wood || run.wood;
  return !wood || (run.judged?.[wood]?.says === "look" && !run.materials?.includes(wood));
});

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
  return (state.dues ?? []).filter((due) => millis(due.due_at) <= here && isOpen(state, due)).sort((one, other) => millis(one.due_at) - millis(other.due_at));
}

// A look is answered by looking alone.
const isOpen = (state, due) => isWatch(due) || !state.answers?.[due.id];

export const nextDue = (scene) =>
  Math.min(...(scene.state.dues ?? []).filter((due) => millis(due.due_at) > now() && isOpen(scene.state, due) && isFor(due, scene)).map((due) => millis(due.due_at)));

/** A look that its watcher's page is asked about alone, until it is missed: only the server knows that they hear it. */
export const isOthers = (due, me) => due.first && due.first !== me && !isMissed(due) && serverReached();

const isFor = (due, { state, me }) =>
  !isOthers(due, me) && (due.kind === "session end" ? due.person === me : due.kind === "call" ? isCallFor(callOf(state, due), { state, me }) : true);

/** Alerts that concern this page, danger first. A session's end concerns its own person. */
export const alertsFor = (scene) =>
  ringing(scene.state).filter((due) => isFor(due, scene)).sort((one, other) => isDanger(other, scene.state) - isDanger(one, scene.state));

/** What asks somebody to look at a machine that runs and must be watched. */
export const isWatch = (due) => ["watch check", "nobody near"].includes(due.kind);

const MISSED_MS = 60_000;

/** Nobody looked although it was time, or everybody was last seen elsewhere: red everywhere. */
export const isMissed = (due) => due.kind === "nobody near" || (due.kind === "watch check" && now() - millis(due.due_at) >= MISSED_MS);

/** What comes before every question. */
export const isDanger = (due, state) => isMissed(due) || callOf(state, due)?.why === "hurt";

/** The call for the lead that an alert is about. */
export const callOf = (state, due) => state.calls?.[due.id.replace(/^call\|/, "")];

export const isLead = (state, person) => state.people?.[person]?.access === "lead";

/** Whoever is here may go to somebody who calls; only a lead is asked to look at a first piece. */
const isCallFor = (call, { state, me }) => Boolean(call && call.person !== me && (call.why !== "look" || isLead(state, me)));

/** What the lead gave of a step to whom: {to, look} of the first of these trays that was given. */
export const givenOf = (run, step, trays) => trays.map((tray) => run?.given?.[`${step}|${tray}`]).find(Boolean);

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
