// Pieces on their way: into a load, through an operation by absolute counts. started = in process + scrap + good.

import { Refused, after, free, indexIn } from "./draft.js";
import { leaveStation, unhand } from "./hands.js";
import { iso, isoAfter, lean, put, sum, without } from "./record.js";

// Loads in these states can be taken as finished when a later operation is pressed on their pieces.
export const CAN_BE_ASSUMED_DONE = ["working", "ended", "unloading"];

/** The tray with so many pieces more (or fewer) at a step; "" is good. */
export function shift(tray, step, pieces) {
  if (!step) return { ...tray, good: tray.good + pieces };
  const left = (tray.at[step] ?? 0) + pieces;
  return { ...tray, at: left ? put(tray.at, step, left) : without(tray.at, step) };
}

/** The tray with so many pieces more (or fewer) in begun loads at a step. */
export function keepBusy(tray, step, pieces) {
  const left = (tray.busy[step] ?? 0) + pieces;
  return { ...tray, busy: left ? put(tray.busy, step, left) : without(tray.busy, step) };
}

/** [good, scrap] counted so far for a load of a tray at a step. */
export const counted = (tray, step, load) => tray.counts[step]?.[load] ?? [0, 0];

/** Pieces of a tray in a load that are not counted yet. */
export const remaining = (load, tray) => Math.max(0, (load.pieces[tray.id] ?? 0) - sum(counted(tray, load.step, load.id)));

/** Brings up to `wanted` free pieces to a step; what was not pressed before is taken as done, all good. */
export function fillEarlier(draft, run, trayKey, step, wanted, moment) {
  const route = draft.routeOf(run, trayKey);
  for (const earlier of route.slice(0, indexIn(route, step.key)).reverse()) {
    if (free(draft.tray(run, trayKey), step.key) >= wanted) break;
    for (const load of draft.openLoads(run)) {
      if (load.step === earlier.key && CAN_BE_ASSUMED_DONE.includes(load.state) && load.pieces[trayKey]) assumeDone(draft, load, moment);
    }
    const tray = draft.tray(run, trayKey);
    const pull = Math.min(free(tray, earlier.key), wanted - free(tray, step.key));
    if (pull > 0) assumePassed(draft, run, trayKey, earlier, step, pull);
  }
  return free(draft.tray(run, trayKey), step.key);
}

function assumePassed(draft, run, trayKey, first, until, pieces) {
  const route = draft.routeOf(run, trayKey);
  let tray = draft.tray(run, trayKey);
  for (const step of route.slice(indexIn(route, first.key), indexIn(route, until.key))) {
    const [good, scrap] = counted(tray, step.key, assumedLoad(step, trayKey));
    tray = withCount(tray, step.key, assumedLoad(step, trayKey), good + pieces, scrap);
  }
  draft.putTray(run, shift(shift(tray, first.key, -pieces), until.key, pieces));
}

/** The id under which a count stands that no load was named for. */
export const assumedLoad = (step, tray) => `${step.key}/${tray}`;

/** A load whose 'done' nobody pressed: all its pieces are good, its station is free. */
function assumeDone(draft, load, moment) {
  for (const trayKey of Object.keys(load.pieces)) {
    const tray = draft.tray(load.run, trayKey);
    countTray(draft, load, trayKey, counted(tray, load.step, load.id)[0] + remaining(load, tray), null, moment);
  }
  for (const person of load.people) unhand(draft, person, load);
  const done = { ...load, state: "done", people: [] };
  draft.putLoad(done);
  leaveStation(draft, done);
}

const withCount = (tray, step, load, good, scrap) => ({ ...tray, counts: put(tray.counts, step, put(tray.counts[step] ?? {}, load, [good, scrap])) });

/** Puts an absolute count for (load, tray, step): pieces go on, come back, or are scrap. null leaves scrap as it is. */
export function countTray(draft, load, trayKey, good, scrap, moment) {
  const tray = draft.tray(load.run, trayKey);
  const step = draft.step(load.run, trayKey, load.step);
  const [oldGood, oldScrap] = counted(tray, step.key, load.id);
  const newScrap = scrap === null ? oldScrap : piecesIn(scrap);
  const more = good + newScrap - (oldGood + oldScrap);
  const next = after(draft.routeOf(load.run, trayKey), step.key);
  const inLoad = isBegun(load) ? remaining(load, tray) : 0;
  const there = inLoad + free(tray, step.key);
  if (more > there) throw new Refused("counts do not fit", { tray: trayKey, step: step.name, counted: good + newScrap, there: oldGood + oldScrap + there });
  if (oldGood - good > (next ? free(tray, next) : tray.good)) throw new Refused("counts gone on", { tray: trayKey, step: step.name, counted: good, before: oldGood });
  let changed = shift(shift(tray, step.key, -more), next, good - oldGood);
  changed = withCount(changed, step.key, load.id, good, newScrap);
  if (isBegun(load)) changed = keepBusy(changed, step.key, remaining(load, changed) - inLoad);
  changed = dropPlaces(withScrap(changed, step.key, load.id, scrap), scrap ?? []);
  if (good > 0 && good !== oldGood) changed = beginRest(changed, step, (isBegun(load) ? load.started_at : null) ?? moment, moment);
  draft.putTray(load.run, changed);
}

export const piecesIn = (scrap) => sum(scrap.map((reason) => reason.pieces));

function withScrap(tray, step, load, scrap) {
  if (scrap === null) return tray;
  const reasons = [...(tray.scrap[step] ?? []).filter((reason) => reason.load !== load), ...scrap.filter((reason) => reason.pieces).map((reason) => ({ ...reason, load }))];
  return { ...tray, scrap: reasons.length ? put(tray.scrap, step, reasons) : without(tray.scrap, step) };
}

/** Whether the load holds pieces: it is begun and not done. */
export const isBegun = (load) => !["done", "off", "none"].includes(load.state);

/** A spoiled personal piece leaves its position; its text goes back in the queue. */
function dropPlaces(tray, scrap) {
  const gone = scrap.flatMap((reason) => reason.positions ?? []).map(String);
  return gone.length ? { ...tray, places: Object.fromEntries(Object.entries(tray.places).filter(([place]) => !gone.includes(place))) } : tray;
}

/** The wait after the last pass of an operation; pieces that come later make it later, its latest end stays. */
function beginRest(tray, step, beganAt, moment) {
  if (!step.wait || !step.last_pass) return tray;
  const old = tray.rests[step.key];
  const began_at = old && !old.ended_at && Date.parse(old.began_at) < Date.parse(beganAt) ? old.began_at : iso(beganAt);
  const latest_at = step.wait.latest === undefined ? null : isoAfter(began_at, step.wait.latest);
  return { ...tray, rests: put(tray.rests, step.key, lean({ why: step.wait.why, began_at, ready_at: isoAfter(moment, step.wait.least ?? 0), latest_at, revision: tray.revision })) };
}

/** Counts for each tray. What is counted for a whole board ("*") shortens its last trays. */
export function spread(counts, pieces) {
  const whole = counts["*"];
  if (!whole) return { ...counts };
  let lost = sum(Object.values(pieces)) - whole.good;
  let scrap = [...(whole.scrap ?? [])];
  const found = {};
  for (const [tray, there] of Object.entries(pieces).reverse()) {
    const here = Math.max(0, Math.min(there, lost));
    lost -= here;
    const [taken, left] = takeScrap(scrap, here);
    scrap = left;
    found[tray] = { good: there - here, scrap: taken };
  }
  const last = Object.keys(pieces).at(-1);
  if (lost < 0 && last !== undefined) found[last].good -= lost;
  return found;
}

function takeScrap(scrap, pieces) {
  const taken = [];
  const left = [];
  for (const reason of scrap) {
    const here = Math.min(pieces, reason.pieces);
    pieces -= here;
    if (here) taken.push({ pieces: here, why: reason.why });
    if (reason.pieces > here) left.push({ ...reason, pieces: reason.pieces - here });
  }
  return [taken, left];
}

/** Takes pieces from a step of a tray: free ones first, then out of a load that no machine is running. */
export function takeOut(draft, run, trayKey, step, pieces) {
  const tray = draft.tray(run, trayKey);
  if (!step) {
    if (tray.good < pieces) throw new Refused("pieces not there", { tray: trayKey, step: "", wanted: pieces, there: tray.good });
    return draft.putTray(run, shift(tray, "", -pieces));
  }
  const { name } = draft.step(run, trayKey, step);
  let short = pieces - free(tray, step);
  for (const load of draft.openLoads(run)) {
    if (short <= 0) break;
    if (load.step !== step || load.state === "running") continue;
    const here = Math.min(short, remaining(load, draft.tray(run, trayKey)));
    if (here <= 0) continue;
    draft.putLoad({ ...load, pieces: put(load.pieces, trayKey, load.pieces[trayKey] - here) });
    draft.putTray(run, keepBusy(draft.tray(run, trayKey), step, -here));
    short -= here;
  }
  if (short > 0) throw new Refused("pieces not there", { tray: trayKey, step: name, wanted: pieces, there: pieces - short });
  return draft.putTray(run, shift(draft.tray(run, trayKey), step, -pieces));
}

/** Holds free pieces of a tray at a step, or all of them. */
export function hold(draft, run, trayKey, step, body, moment) {
  const tray = draft.tray(run, trayKey);
  const there = free(tray, step.key);
  const wanted = body.pieces ?? there;
  if (wanted <= 0 || wanted > there) throw new Refused("pieces not there", { tray: trayKey, step: step.name, wanted, there });
  const hold = lean({ step: step.key, pieces: wanted, why: body.why, waiting_for: body.waiting_for, until: iso(body.until), since: moment });
  draft.putTray(run, { ...tray, holds: [...tray.holds, hold] });
}
