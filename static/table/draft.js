// A state being changed by one event: what it touches is copied, and thrown away where the event does not fit.

import { asLoad, asPerson, asStation, asTray, loadRecord, personRecord, stationRecord, sum, trayRecord, without } from "./record.js";

/** A press that does not fit: a code that names the sentence, and its facts. */
export class Refused extends Error {
  constructor(code, facts = {}) {
    super(code);
    this.code = code;
    this.facts = facts;
  }
}

const OVER = ["done", "off"];
// Fields of a run that are left out where they are empty.
const SOMETIMES = ["boards", "first_pieces", "stopped", "out", "given", "looks", "materials", "past"];

export class Draft {
  constructor(state, table) {
    this.base = state;
    this.table = table;
    this.people = {};
    this.stations = {};
    this.heads = {};
    this.trays = {};
    this.loads = {};
    this.past = {};
    this.changes = {};
  }

  // reading

  run(key) {
    const found = this.heads[key] ?? this.base.runs?.[key];
    if (!found) throw new Refused("run unknown", { run: key });
    return found;
  }

  _trays(run) {
    return this.trays[run] ?? this.run(run).trays ?? {};
  }

  _loads(run) {
    return this.loads[run] ?? this.run(run).loads ?? {};
  }

  _past(run) {
    return this.past[run] ?? this.run(run).past ?? {};
  }

  hasTray(run, key) {
    return Object.hasOwn(this._trays(run), key);
  }

  tray(run, key) {
    if (!this.hasTray(run, key)) throw new Refused("tray unknown", { tray: key });
    return asTray(key, this._trays(run)[key]);
  }

  load(run, key) {
    const raw = this.base.runs?.[run] ? (this._loads(run)[key] ?? this._past(run)[key]) : undefined;
    return raw ? asLoad(run, key, raw) : null;
  }

  /** The loads of a run that are begun and not done. */
  openLoads(run) {
    return Object.entries(this._loads(run)).map(([key, raw]) => asLoad(run, key, raw)).filter((load) => !OVER.includes(load.state));
  }

  person(key) {
    return this.people[key] ?? asPerson(key, this.base.people?.[key]);
  }

  station(key) {
    return this.stations[key] ?? asStation(key, this.base.stations?.[key]);
  }

  /** The route of a run, of the revision that holds for a tray. */
  routeOf(run, tray) {
    const { revision } = this.tray(run, tray);
    return (this.run(run).routes ?? []).find((route) => route.number === revision)?.steps ?? this.route(run);
  }

  /** The steps of a run's newest route. */
  route(run) {
    return this.run(run).routes?.at(-1)?.steps ?? [];
  }

  /** The route that a load was begun by, whatever the newest says. */
  routeOfLoad(load) {
    return this.run(load.run).routes?.find((route) => route.number === load.revision)?.steps ?? this.route(load.run);
  }

  stepOfLoad(load) {
    return stepIn(this.routeOfLoad(load), load.step);
  }

  step(run, tray, key) {
    const found = stepIn(this.routeOf(run, tray), key);
    if (!found) throw new Refused("step unknown", { step: key, tray });
    return found;
  }

  of(name) {
    return this.changes[name] ?? this.base[name] ?? {};
  }

  // writing

  putRun(key, changes) {
    this.heads[key] = { ...this.run(key), ...changes };
  }

  putTray(run, tray) {
    this.trays[run] = { ...this._trays(run), [tray.id]: tray };
  }

  /** A load changed last stands last, as on the server. One taken off, or a board, stands apart once it is over. */
  putLoad(load) {
    const others = without(this._loads(load.run), load.id);
    const past = without(this._past(load.run), load.id);
    const apart = load.state === "off" || (load.state === "done" && this.run(load.run).boards?.[load.id]);
    this.loads[load.run] = load.state === "off" ? others : { ...others, [load.id]: load };
    this.past[load.run] = apart ? { ...past, [load.id]: load } : past;
  }

  putPerson(person) {
    if (person.key) this.people[person.key] = person;
  }

  putStation(station) {
    this.stations[station.key] = station;
  }

  /** The new state; the old one is as it was. */
  finish() {
    const state = { ...this.base, ...this.changes };
    state.people = merged(this.base.people, this.people, personRecord);
    state.stations = merged(this.base.stations, this.stations, stationRecord);
    const touched = new Set([this.heads, this.trays, this.loads].flatMap(Object.keys));
    if (touched.size) state.runs = { ...this.base.runs };
    for (const key of touched) state.runs[key] = this._finishRun(key);
    return state;
  }

  _finishRun(key) {
    const run = { ...this.run(key) };
    if (this.trays[key]) run.trays = mapped(this.trays[key], trayRecord);
    if (this.loads[key]) run.loads = mapped(this.loads[key], loadRecord);
    if (this.past[key]) run.past = mapped(this.past[key], loadRecord);
    for (const name of SOMETIMES) if (run[name] && !Object.keys(run[name]).length) delete run[name];
    return tallied(run);
  }
}

const mapped = (records, write) => Object.fromEntries(Object.entries(records).map(([key, record]) => [key, write(record)]));

// Somebody or something that the page was not told of stays untold.
function merged(before, changed, write) {
  const known = Object.entries(changed).filter(([key]) => before?.[key]);
  return known.length ? { ...before, ...Object.fromEntries(known.map(([key, value]) => [key, write(value)])) } : before;
}

/** The run's own totals, and the good pieces of each order line: allotted late, the earliest due first. */
function tallied(run) {
  const trays = Object.values(run.trays ?? {});
  const good = sum(trays.map((tray) => tray.good ?? 0));
  const scrap = sum(trays.flatMap((tray) => Object.values(tray.scrap ?? {}).flat()).map((reason) => reason.pieces));
  const orders = run.orders ?? [];
  const due = (order) => (order.due ? Date.parse(order.due) : Infinity);
  const allotted = new Map();
  let left = good;
  for (const order of [...orders].sort((one, other) => (due(one) < due(other) ? -1 : due(one) > due(other) ? 1 : 0))) {
    allotted.set(order.line, Math.min(left, order.pieces));
    left -= allotted.get(order.line);
  }
  const wanted = sum(orders.map((order) => order.pieces));
  const started = sum(trays.map((tray) => tray.started ?? 0));
  return { ...run, wanted, started, good, scrap, orders: orders.map((order) => ({ ...order, good: allotted.get(order.line) })) };
}

// A route is its steps in order.

export const stepIn = (route, key) => route.find((step) => step.key === key) ?? null;
export const indexIn = (route, key) => route.findIndex((step) => step.key === key);

/** The key of the step after `key`, or "" where pieces are good. */
export const after = (route, key) => route[indexIn(route, key) + 1]?.key ?? "";

/** Pieces of a tray at a step that are in no begun load and not held. */
export const free = (tray, step) => Math.max(0, (tray.at[step] ?? 0) - (tray.busy[step] ?? 0) - held(tray, step));

const held = (tray, step) => sum(tray.holds.filter((hold) => hold.step === step).map((hold) => hold.pieces));

export const inProcess = (tray) => sum(Object.values(tray.at));
