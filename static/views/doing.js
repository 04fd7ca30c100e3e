// What a person is in the middle of, and what comes first: read from the state, never ranked here.

import { millis, minutesTo, now, today } from "../door/clock.js";
import { serverReached } from "../door/shop.js";
import { inOrder, stepOfLoad } from "../door/words.js";

export const loadAt = (state, at) => (at ? state.runs?.[at[0]]?.loads?.[at[1]] : undefined);

/** What a person's hands are at: {job} or {run, load, step, station}, or null. */
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

/** The cautions of a step as its load stands: nobody has to watch a machine that has stopped. */
export const careOf = (step, load) =>
  (step?.care ?? []).filter(({ key }) => key !== "stay-and-watch" || !["ended", "unloading", "stopped"].includes(load?.state));

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
  const watcher = state.people?.[load.watcher];
  const gone = !watcher?.came_at || watcher.away || (load.alone_since && millis(load.alone_since) <= now());
  return gone ? "" : load.watcher;
}

/** What is ticked before a machine starts: the catalogue's points for the station, then the operation's own. */
export const listOf = ({ step, station }) => [...(station?.start ?? []).map((key) => ({ key })), ...(step?.checklist ?? []).map((text) => ({ text }))];

/** The full start list: once a session, and again after any change at the station or for another person. */
export const wantsList = (here, person) =>
  Boolean(listOf(here).length && (here.load.fresh || asksMaterial(here) || here.station?.listed !== `${today()}|${here.station?.setups ?? 0}|${person}`));

/** Whether a step brings a finish on, wherever that is: the server reads its words, and says what rags it leaves. */
export const isCoat = (step) => Boolean(step?.finish) || step?.leaves?.what === "rags";

// Under a machine that heats: what nobody named, or whose data sheet nobody looked at.
const asksMaterial = (here) => Boolean(here.station?.heats) && unknownTrays(here).length + toLookAt(here).length > 0;

const woodOf = (run, tray) => run.trays?.[tray]?.wood || run.wood || "";

/** The materials of a load, each once. */
export const materials = ({ run, load }) => [...new Set(Object.keys(load.pieces ?? {}).map((tray) => woodOf(run, tray)))].filter(Boolean);

/** The trays of which nobody noted what they are made of. */
export const unknownTrays = ({ run, load }) => inOrder(Object.keys(load.pieces ?? {}).filter((tray) => !woodOf(run, tray)));

/** The materials of a load whose data sheet nobody has looked at yet in this run. */
export const toLookAt = ({ run, load }) => materials({ run, load }).filter((material) => run.judged?.[material]?.says === "look" && !run.materials?.includes(material));

export const inSession = (state, person) => {
  const there = state.people?.[person];
  return Boolean(there?.until && minutesTo(there.until) > -6 * 60 && there.came_at && now() - millis(there.came_at) < 18 * 3_600_000);
};

/** Alerts whose moment is past and that nobody answered, oldest first. What was past for the server is past, though the
 *  clock here may be a few milliseconds behind. */
export function ringing(state) {
  const here = Math.max(now(), millis(state.now) || 0);
  return (state.dues ?? []).filter((due) => millis(due.due_at) <= here && isOpen(state, due)).sort((one, other) => millis(one.due_at) - millis(other.due_at));
}

/** The same, of those about a load. */
export const ringingFor = (state, load) => ringing(state).filter((due) => due.load === load.id && due.run === load.run);

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
