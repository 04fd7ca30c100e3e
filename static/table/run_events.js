// What happens to a run as a whole: closed, its boards, supplies, first pieces, calls.

import { Refused, free, stepIn } from "./draft.js";
import { careDues } from "./dues.js";
import { leaveStation } from "./hands.js";
import { counted, shift } from "./pieces.js";
import { iso, localDay, put, without } from "./records.js";

function openRun(draft, event) {
  const run = draft.run(event.run);
  if (run.state !== "open") throw new Refused("run closed", { run: run.name, state: run.state });
  return run;
}

const change = (draft, event, name, value) => draft.putRun(event.run, { [name]: value });

function closed(draft, event) {
  const run = openRun(draft, event);
  const loads = draft.openLoads(event.run);
  mayEnd(draft, event, run, [...loads, ...Object.values(draft.base.said_running ?? {}).filter((load) => load.run === event.run)]);
  loads.forEach((load) => letGo(draft, event.run, load));
  change(draft, event, "state", event.kind === "run finished" ? "finished" : "abandoned");
}

/** A run ends only when nothing of it runs, is in hands or is asked about. */
function mayEnd(draft, event, run, loads) {
  for (const load of loads) {
    const about = { station: draft.base.stations?.[load.station]?.name ?? load.station, trays: Object.keys(load.pieces ?? {}) };
    if (load.state === "running") throw new Refused("machine runs", about);
    if (load.people?.length) throw new Refused("load in hands", about);
  }
  for (const [key, { at = {}, rests = {}, revision }] of Object.entries(run.trays ?? {})) {
    for (const [step, rest] of Object.entries(rests)) {
      const name = () => draft.stepOfLoad({ run: event.run, step, revision: rest.revision || revision })?.name ?? step;
      if (rest.latest_at && !rest.ended_at && Object.keys(at).length) throw new Refused("wait open", { tray: key, step: name(), why: rest.why });
    }
  }
  const isPast = (due) => Date.parse(due.due_at) <= Date.parse(event.moment);
  const care = careDues(draft.base).find((due) => due.run === event.run && isPast(due));
  if (care) throw new Refused("care open", { reminder: care.id });
}

/** A run that ends leaves no load on a station and no hands at one. */
function letGo(draft, run, load) {
  for (const person of load.people) draft.putPerson({ ...draft.person(person), hands: null, hands_since: null });
  leaveStation(draft, load);
  draft.putLoad({ ...load, state: "off", people: [], began: {} });
  for (const key of Object.keys(load.pieces)) {
    const tray = draft.tray(run, key);
    draft.putTray(run, { ...tray, busy: without(tray.busy, load.step) });
  }
}

/** Pieces of the board that are not cut yet are scrap; those past the cut go on. */
function boardLost(draft, event) {
  const key = event.body.board;
  const fed = openRun(draft, event).boards?.[key];
  if (!fed) throw new Refused("board unknown", { board: key });
  for (const trayKey of Object.keys(fed)) {
    const tray = draft.tray(event.run, trayKey);
    const step = draft.routeOf(event.run, trayKey)[0]?.key;
    const lost = free(tray, step);
    if (lost) draft.putTray(event.run, withLost(tray, step, key, lost, event.body.why || "board lost"));
  }
}

function withLost(tray, step, board, lost, why) {
  const [good, scrap] = counted(tray, step, board);
  const reasons = [...(tray.scrap[step] ?? []), { pieces: lost, why, load: board }];
  const counts = put(tray.counts, step, put(tray.counts[step] ?? {}, board, [good, scrap + lost]));
  return { ...shift(tray, step, -lost), scrap: put(tray.scrap, step, reasons), counts };
}

const supplyOut = (draft, event) => change(draft, event, "out", put(openRun(draft, event).out ?? {}, event.body.supply, iso(event.body.until)));
const supplyIn = (draft, event) => change(draft, event, "out", without(openRun(draft, event).out, event.body.supply));

/** For what a first-piece check holds: the run, the load, or the setup on that day. */
function checkScope(draft, event, step, per) {
  if (per === "run") return "run";
  if (per === "load") return event.load;
  return `${draft.station(event.station || step.station).setups}|${localDay(event.moment, draft.base.shop?.zone)}`;
}

/** A first piece that fails stops the operation until somebody decides. */
function firstPieceChecked(draft, event) {
  const run = openRun(draft, event);
  const step = stepIn(draft.route(event.run), event.operation);
  if (!step) throw new Refused("step unknown", { step: event.operation, tray: "" });
  const { check = "", result } = event.body;
  const per = (step.checks ?? []).find((one) => one.key === check)?.per ?? "setup";
  const scope = `${step.key}|${checkScope(draft, event, step, per)}|${check}`;
  change(draft, event, "first_pieces", put(run.first_pieces ?? {}, scope, result));
  if (result === "fail") change(draft, event, "stopped", put(run.stopped ?? {}, step.key, event.id));
}

function firstPieceDecided(draft, event) {
  const run = openRun(draft, event);
  const here = ([key]) => key.startsWith(`${event.operation}|`);
  const entries = Object.entries(run.first_pieces ?? {});
  const decided = event.body.what === "go on" ? entries.map((one) => (here(one) ? [one[0], "pass"] : one)) : entries.filter((one) => !here(one));
  change(draft, event, "first_pieces", Object.fromEntries(decided));
  change(draft, event, "stopped", without(run.stopped, event.operation));
}

function given(draft, event) {
  const { to, trays, look } = event.body;
  const keys = trays.map((tray) => `${event.operation}|${tray}`);
  const others = Object.entries(openRun(draft, event).given ?? {}).filter(([key]) => to || !keys.includes(key));
  const told = to ? keys.map((key) => [key, { to, look: Boolean(look) }]) : [];
  change(draft, event, "given", { ...Object.fromEntries(others), ...Object.fromEntries(told) });
}

const lookGiven = (draft, event) =>
  change(draft, event, "looks", put(openRun(draft, event).looks ?? {}, `${event.operation}|${event.tray}`, event.body.result));

/** Who calls again for the same rings no second time: the call that is open says how often. */
function leadCalled(draft, event) {
  openRun(draft, event);
  draft.tray(event.run, event.tray);
  const { person, run, tray, operation: step } = event;
  const { why } = event.body;
  const note = (event.body.note ?? "").slice(0, 300);
  const calls = draft.of("calls");
  const same = ([key, one]) => one.run === run && one.tray === tray && one.person === person && one.why === why && !draft.of("answers")[`call|${key}`];
  const [key, open] = Object.entries(calls).find(same) ?? [];
  const call = open ? { ...open, note: note || open.note, step: step || open.step, times: (open.times ?? 1) + 1 } : { why, note, person, at: event.moment, run, tray, step };
  draft.changes.calls = put(calls, key ?? event.id, call);
}

/** A note changes nothing: it is read in the log. */
const noted = (draft, event) => event.run && draft.run(event.run);

export const HANDLERS = {
  "run finished": closed,
  "run abandoned": closed,
  "board lost": boardLost,
  "supply out": supplyOut,
  "supply in": supplyIn,
  "first piece checked": firstPieceChecked,
  "first piece decided": firstPieceDecided,
  "operation given": given,
  "look given": lookGiven,
  "lead called": leadCalled,
  "note written": noted,
};
