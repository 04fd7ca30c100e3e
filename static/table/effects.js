// What the transition table's effects do. Each takes the scene: draft, event, load, step, the row's next state.

import { Refused, indexIn, stepIn } from "./draft.js";
import { freeHands, leaveStation, standBy, takeHands, unhand } from "./hands.js";
import * as movesOfPieces from "./moves_of_pieces.js";
import { piecesWanted } from "./names.js";
import { countTray, counted, fillEarlier, hold, isBegun, keepBusy, remaining, spread } from "./pieces.js";
import { isSame, isoAfter, lean, put, sum } from "./record.js";
import { alertId, noteAnswer } from "./shop_answers.js";
import { atHand } from "./sight.js";

function theStep({ step, event }) {
  if (!step) throw new Refused("step unknown", { step: event.operation, tray: event.tray });
  return step;
}

/** The pieces go into the load; earlier operations that nobody pressed are filled in, all good. */
function takePieces(scene) {
  const { draft, event } = scene;
  const step = theStep(scene);
  const wanted = piecesWanted(draft, event, scene.load, step);
  if (event.kind === "pieces counted") {
    for (const [tray, pieces] of Object.entries(wanted)) fillEarlier(draft, event.run, tray, step, pieces, event.moment);
    return;
  }
  if (!Object.values(wanted).some(Boolean)) {
    throw new Refused("pieces not there", { tray: Object.keys(wanted)[0] ?? event.tray, step: step.name, wanted: 1, there: 0 });
  }
  for (const [tray, pieces] of Object.entries(wanted)) {
    const there = fillEarlier(draft, event.run, tray, step, pieces, event.moment);
    if (there < pieces) throw new Refused("pieces not there", { tray, step: step.name, wanted: pieces, there });
    draft.putTray(event.run, keepBusy(draft.tray(event.run, tray), step.key, pieces));
    endRestBefore(scene, tray, step);
  }
  for (const [tray, placed] of Object.entries(event.body.places ?? {})) movesOfPieces.place(draft, event.run, tray, placed);
  const known = (tray) => sum(counted(draft.tray(event.run, tray), step.key, scene.load.id));
  const pieces = Object.fromEntries(Object.entries(wanted).map(([tray, count]) => [tray, count + known(tray)]));
  const state = ["done", "off"].includes(scene.to) ? "working" : scene.to;
  const { revision } = draft.tray(event.run, Object.keys(pieces)[0]);
  scene.load = { ...scene.load, pieces, started_at: event.moment, phase_at: event.moment, state, stop: null, revision };
}

/** The wait before a step ends when somebody goes on; before its time it was cut short. */
function endRestBefore({ draft, event }, trayKey, step) {
  const tray = draft.tray(event.run, trayKey);
  const route = draft.routeOf(event.run, trayKey);
  const waits = ([key, rest]) => !rest.ended_at && stepIn(route, key) && indexIn(route, key) < indexIn(route, step.key);
  const ended = Object.entries(tray.rests).filter(waits).map(([key, rest]) => [key, endedRest(rest, event)]);
  if (ended.length) draft.putTray(event.run, { ...tray, rests: { ...tray.rests, ...Object.fromEntries(ended) } });
}

const endedRest = (rest, event) => lean({ ...rest, ended_at: event.moment, early: Date.parse(event.moment) < Date.parse(rest.ready_at) });

/** The load holds its station; a change of step or run makes it fresh. */
function takeStation(scene) {
  const { draft, load } = scene;
  const station = draft.station(load.station);
  if (station.load && !isSame(station.load, [load.run, load.id])) throw busy(draft, station.load);
  const setup = [load.run, load.step];
  const fresh = !isSame(station.setup, setup);
  draft.putStation({ ...station, load: [load.run, load.id], setup, setups: station.setups + (fresh ? 1 : 0) });
  scene.load = { ...load, fresh };
  draft.putLoad(scene.load);
}

/** The refusal that names what is on the station. */
export function busy(draft, heldBy) {
  const load = draft.load(...heldBy);
  const step = load ? (draft.stepOfLoad(load)?.name ?? load.step) : "";
  const station = load ? (draft.base.stations?.[load.station]?.name ?? load.station) : "";
  return new Refused("station busy", { station, step, trays: Object.keys(load?.pieces ?? {}), state: load?.state ?? "", run: heldBy[0], load: heldBy[1] });
}

/** Pieces of the load that were not counted are free again at the step. */
function giveBack({ draft, event, load }) {
  for (const trayKey of Object.keys(load.pieces)) {
    const tray = draft.tray(event.run, trayKey);
    const left = remaining(load, tray);
    if (left) draft.putTray(event.run, keepBusy(tray, load.step, -left));
  }
}

function handsOn(scene) {
  const { draft, event, load } = scene;
  if (isSame(draft.person(event.person).hands, [load.run, load.id]) && load.state === scene.to) return;
  draft.putLoad(load);
  scene.load = takeHands(draft, load, event);
}

function handsOff(scene) {
  freeHands(scene.draft, scene.event.person);
  scene.load = scene.draft.load(scene.load.run, scene.load.id) ?? scene.load;
}

function allHandsOff(scene) {
  for (const person of scene.load.people) unhand(scene.draft, person, scene.load);
  scene.load = { ...scene.load, people: [], began: {} };
}

/** The machine is thought to end in so many minutes: those said, else the step's machine time. */
function setEnd(scene) {
  const { event } = scene;
  const minutes = event.body.minutes ?? theStep(scene).minutes?.machine ?? 0;
  let { load } = scene;
  if (load.state !== "running") load = { ...load, phase_at: event.moment, stop: null };
  scene.load = { ...load, end_at: isoAfter(event.moment, minutes), ends: load.ends + 1 };
}

function machineOff(scene) {
  const { load, event } = scene;
  if (scene.to !== "ended") return;
  scene.load = { ...load, end_at: event.moment };
  if (event.person) noteAnswer(scene.draft, alertId("machine end", load.run, load.id, load.ends), "ended", event);
}

function watch(scene) {
  if (scene.event.kind === "watch taken" && !isAtHand(scene)) return;
  const { load, event } = scene;
  const looked = !load.checked_at || event.kind === "machine started";
  standBy(scene.draft, event.person, load);
  scene.load = { ...load, watcher: event.person || load.watcher, checked_at: looked ? event.moment : load.checked_at };
}

/** Somebody looked, and watches from then on; nobody does with hands elsewhere. */
function noteCheck(scene) {
  if (!isAtHand(scene)) return;
  standBy(scene.draft, scene.event.person, scene.load);
  const { load, event } = scene;
  scene.load = { ...load, checked_at: event.moment, checks: load.checks + 1, watcher: event.person || load.watcher };
}

const isAtHand = ({ draft, event, load }) => atHand(draft, draft.person(event.person), load);

/** Materials whose data sheet somebody looked at: they are asked about once a run. */
function noteMaterials({ draft, event }) {
  const known = draft.run(event.run).materials ?? [];
  const fresh = (event.body.materials ?? []).filter((material) => !known.includes(material));
  if (fresh.length) draft.putRun(event.run, { materials: [...known, ...fresh] });
}

/** Where it stopped is kept; a cutter, a slip or a failure opens the first-piece check again. */
function noteStop(scene) {
  const { draft, event } = scene;
  const left = scene.load.state === "running" && scene.load.end_at ? (Date.parse(scene.load.end_at) - Date.parse(event.moment)) / 60_000 : 0;
  scene.load = { ...scene.load, stop: left > 0 ? { ...event.body, left_minutes: Math.floor(left * 10) / 10 } : event.body, end_at: null };
  if (!["cutter", "slip", "failed"].includes(event.body.why)) return;
  const station = draft.station(scene.load.station);
  draft.putStation({ ...station, setups: station.setups + 1 });
  scene.load = { ...scene.load, fresh: true };
}

/** Absolute counts for each tray of the load; all that is left is good where nothing is said. */
function putCounts(scene) {
  const { draft, event, load } = scene;
  const { body } = event;
  if (event.kind === "pieces counted") return countTray(draft, load, event.tray, body.good, body.scrap ?? [], event.moment);
  const given = Object.keys(load.pieces).length ? spread(body.counts ?? {}, load.pieces) : { ...body.counts };
  for (const trayKey of new Set([...Object.keys(load.pieces), ...Object.keys(given)])) {
    const said = given[trayKey];
    const tray = draft.tray(event.run, trayKey);
    if (said) countTray(draft, load, trayKey, said.good, said.scrap ?? [], event.moment);
    else if (isBegun(load)) countLeft(draft, event, load, tray);
  }
  return undefined;
}

function countLeft(draft, event, load, tray) {
  const [good] = counted(tray, load.step, load.id);
  const left = remaining(load, tray);
  if (event.body.how !== "scrap") return countTray(draft, load, tray.id, good + left, null, event.moment);
  const kept = (tray.scrap[load.step] ?? []).filter((reason) => reason.load === load.id).map(({ pieces, why }) => ({ pieces, why }));
  return countTray(draft, load, tray.id, good, [...kept, { pieces: left, why: "stopped" }], event.moment);
}

function releasePieces({ draft, event }) {
  const tray = draft.tray(event.run, event.tray);
  draft.putTray(event.run, { ...tray, holds: tray.holds.filter((hold) => event.operation && hold.step !== event.operation) });
}

function endWait({ draft, event }) {
  const tray = draft.tray(event.run, event.tray);
  const rest = tray.rests[event.operation];
  if (rest) draft.putTray(event.run, { ...tray, rests: put(tray.rests, event.operation, endedRest(rest, event)) });
}

export const EFFECTS = {
  "take pieces": takePieces,
  "give back": giveBack,
  "take station": takeStation,
  "leave station": ({ draft, load }) => leaveStation(draft, load),
  "hands on": handsOn,
  "hands off": handsOff,
  "all hands off": allHandsOff,
  "set end": setEnd,
  "machine off": machineOff,
  watch,
  "note materials": noteMaterials,
  "note check": noteCheck,
  "note stop": noteStop,
  "put counts": putCounts,
  "move pieces": ({ draft, event }) => movesOfPieces.move(draft, event),
  "hold pieces": (scene) => hold(scene.draft, scene.event.run, scene.event.tray, theStep(scene), scene.event.body, scene.event.moment),
  "release pieces": releasePieces,
  "end wait": endWait,
  "note tray": ({ draft, event }) => movesOfPieces.note(draft, event),
};
