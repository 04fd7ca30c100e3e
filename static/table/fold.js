// The page's fold: this phone's own presses laid over the last state, by the transition table that the server reads too.
// It mirrors runboard/run/ function by function, for the kinds of press that a page makes; tests/vectors holds the two
// together. It never ranks and never plans.

import { Draft, inProcess, Refused, stepIn } from "./draft.js";
import { noteCare, noteUnfitCare } from "./care.js";
import { redue } from "./dues.js";
import { noteSight } from "./sight.js";
import { busy, EFFECTS } from "./effects.js";
import { HANDLERS as PEOPLE } from "./people.js";
import { assumedLoad, isBegun } from "./pieces.js";
import { asLoad, isSame, lean } from "./record.js";
import { HANDLERS as RUN_EVENTS } from "./run_events.js";
import { force } from "./settle.js";
import { HANDLERS as SHOP_EVENTS } from "./shop_events.js";
import { countedBefore, stepOf, traysOf } from "./names.js";

const HANDLERS = { ...PEOPLE, ...SHOP_EVENTS, ...RUN_EVENTS };
const STEP_NEEDED = ["pieces counted", "pieces held", "wait ended"];

/** The state as it would be after these events, by corrected moment and id; `state` itself stays as it is. */
export function overlay(state, events, table) {
  const made = effective(events).sort(byMoment).reduce((before, event) => applyEvent(before, event, table), state);
  return redue(state, made);
}

const momentOf = (event) => Date.parse(event.at) + (event.offset_ms ?? 0);
const byMoment = (one, other) => momentOf(one) - momentOf(other) || (one.id < other.id ? -1 : 1);

/** Events that hold: those that an 'event undone' among them names never happened. */
function effective(events) {
  const gone = new Set();
  for (const undo of events.filter((event) => event.kind === "event undone").reverse()) {
    if (!gone.has(undo.id)) events.filter((event) => pressOf(event.id) === undo.body?.event || event.id === undo.body?.event).forEach((event) => gone.add(event.id));
  }
  return events.filter((event) => !gone.has(event.id));
}

/** One event more; where it does not fit, it is listed in `unsettled` with its code. Never throws. */
function applyEvent(state, raw, table) {
  try {
    return applied(state, formed(raw), table);
  } catch {
    return state; // a state or an event that the page cannot read: the server will say
  }
}

function applied(state, event, table) {
  let draft = new Draft(state, table);
  try {
    take(draft, event);
    noteCare(draft, event);
  } catch (refusal) {
    if (!(refusal instanceof Refused)) throw refusal;
    draft = new Draft(state, table);
    listUnsettled(draft, event, refusal);
    noteUnfitCare(draft, event);
  }
  noteSight(draft, event);
  noteSeen(draft, event);
  return draft.finish();
}

/** The event with every field that the fold reads, and its corrected moment. */
function formed(raw) {
  const text = Object.fromEntries(["run", "load", "tray", "operation", "station", "person"].map((name) => [name, raw[name] ?? ""]));
  return { ...raw, ...text, body: raw.body ?? {}, moment: new Date(Date.parse(raw.at) + (raw.offset_ms ?? 0)).toISOString() };
}

/** Lets one event change the draft; refused where it does not fit. */
function take(draft, event) {
  const subject = subjectOf(draft.table, event.kind);
  if (subject) transit(draft, event, subject);
  else if (event.kind === "entry settled") settle(draft, event);
  else HANDLERS[event.kind]?.(draft, event);
}

const subjectOf = (table, kind) => ["load", "tray"].find((subject) => table?.[subject]?.rows.some((row) => row.kind === kind));

/** Takes the row for this kind and state: its guards, its effects, its next state. Refused where none fits. */
function transit(draft, event, subject) {
  const run = draft.run(event.run);
  if (run.state !== "open") throw new Refused("run closed", { run: run.name, state: run.state });
  const { load, step, state } = subject === "load" ? loadAtHand(draft, event) : trayAtHand(draft, event);
  const row = findRow(draft.table, subject, event, state, step);
  if (!row) throw wrongState(event, load, step, state);
  const to = row.to === "same" ? state : row.to;
  const scene = { draft, event, load, step, to };
  if (row.must?.includes("station free")) {
    const heldBy = draft.station(load.station).load;
    if (heldBy && !isSame(heldBy, [load.run, load.id])) throw busy(draft, heldBy);
  }
  for (const effect of row.do) EFFECTS[effect](scene);
  if (subject === "tray" || to === "none") return;
  const changed = scene.load.state !== to || !scene.load.phase_at;
  draft.putLoad({ ...scene.load, state: to, phase_at: changed ? event.moment : scene.load.phase_at });
}

function wrongState(event, load, step, state) {
  const inside = Object.keys(load.pieces);
  const trays = inside.length ? inside : event.tray ? [event.tray] : traysOf(load.id);
  const now = ["none", "off"].includes(state) ? "not begun" : state;
  return new Refused("transition", { state: now, kind: event.kind, step: step?.name ?? stepOf(load.id), trays });
}

/** The first row for this kind and state whose `when` holds. */
function findRow(table, subject, event, state, step) {
  const fits = (row) => row.kind === event.kind && row.from.includes(state) && (row.when ?? []).every((when) => holds(when, event, step));
  return table[subject].rows.find(fits);
}

function holds(condition, event, step) {
  if (condition === "machine") return Boolean(step?.machine);
  if (condition === "by hand") return Boolean(step) && !step.machine;
  return event.body.how === condition.replace(/^how /, "");
}

/** The load that a press names, as it stands, done before, or not begun yet; and its step. */
function loadAtHand(draft, event) {
  const known = draft.load(event.run, event.load);
  const key = known ? known.step : event.operation || stepOf(event.load);
  const step = stepFor(draft, event, key, known);
  if (!step) throw new Refused("step unknown", { step: key, tray: event.tray });
  let load = known ?? asLoad(event.run, event.load, { step: step.key, station: event.station || step.station, state: "none" });
  // A done load is not in the state: it is known by its counts.
  const before = isBegun(load) ? null : countedBefore(draft, event.run, load.id, step.key);
  if (before) load = { ...load, state: "done", pieces: before };
  else if (load.state === "done") load = { ...load, state: "off" };
  // Begun anew, and perhaps at another station than the one it was taken off.
  if (["none", "off"].includes(load.state)) load = { ...load, station: event.station || step.station };
  return { load, step, state: load.state };
}

function stepFor(draft, event, key, load) {
  if (load && isBegun(load)) return draft.stepOfLoad(load);
  const trays = load ? Object.keys(load.pieces) : [...Object.keys(event.body.pieces ?? {}), ...traysOf(event.load)];
  const tray = trays.find((tray) => draft.hasTray(event.run, tray));
  return stepIn(tray === undefined ? draft.route(event.run) : draft.routeOf(event.run, tray), key);
}

/** The tray that a press names: the load it is counted in, its step, and whether pieces are in process. */
function trayAtHand(draft, event) {
  const tray = draft.tray(event.run, event.tray);
  const step = event.operation ? stepIn(draft.routeOf(event.run, event.tray), event.operation) : null;
  if (!step && STEP_NEEDED.includes(event.kind)) throw new Refused("step unknown", { step: event.operation, tray: event.tray });
  const state = inProcess(tray) ? "open" : "closed";
  if (!step) return { load: asLoad(event.run, "", { step: "", station: "", state: "none" }), step, state };
  const named = event.load ? draft.load(event.run, event.load) : null;
  const inside = draft.openLoads(event.run).find((load) => load.step === step.key && load.pieces[tray.id]);
  const key = event.load || assumedLoad(step, tray.id);
  const none = asLoad(event.run, key, { step: step.key, station: step.station, state: "none" });
  return { load: named ?? inside ?? draft.load(event.run, key) ?? none, step, state };
}

/** What becomes of a press that did not fit: the shop's version stays, or the press is made to fit. */
function settle(draft, event) {
  const list = draft.base.unsettled ?? [];
  const entry = list.find((each) => each.event === event.body.event);
  if (!entry) throw new Refused("nothing to settle", { event: event.body.event });
  draft.changes.unsettled = list.filter((each) => each !== entry);
  if (event.body.keep === "press" && entry.kind !== event.kind) force(draft, entry, { ...formed({ ...entry, id: entry.event }), moment: event.moment }, take);
}

function listUnsettled(draft, event, refusal) {
  const subject = event.load || event.tray || event.station;
  const { load, tray, operation, station } = event;
  const entry = { event: event.id, kind: event.kind, run: event.run, subject, person: event.person, at: event.moment, code: refusal.code, facts: refusal.facts };
  draft.changes.unsettled = [...(draft.base.unsettled ?? []).filter((entry) => entry.event !== event.id), { ...lean({ ...entry, load, tray, operation, station }), body: event.body }];
}

/** The press that an event belongs to: X for X, X.2, X.3. */
const pressOf = (id) => id.split(".")[0];

function noteSeen(draft, event) {
  if (!event.person) return;
  draft.putPerson({ ...draft.person(event.person), seen_at: event.moment, last: event.kind === "event undone" ? "" : pressOf(event.id) });
}
