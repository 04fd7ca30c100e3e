// What happens to a run as a whole: supplies, first pieces, what is given to whom, calls.

import { Refused, stepIn } from "./draft.js";
import { iso, localDay, put, without } from "./record.js";

function openRun(draft, event) {
  const run = draft.run(event.run);
  if (run.state !== "open") throw new Refused("run closed", { run: run.name, state: run.state });
  return run;
}

const change = (draft, event, name, value) => draft.putRun(event.run, { [name]: value });

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
  const per = (step.checks ?? []).find((each) => each.key === check)?.per ?? "setup";
  const scope = `${step.key}|${checkScope(draft, event, step, per)}|${check}`;
  change(draft, event, "first_pieces", put(run.first_pieces ?? {}, scope, result));
  if (result === "fail") change(draft, event, "stopped", put(run.stopped ?? {}, step.key, event.id));
}

function firstPieceDecided(draft, event) {
  const run = openRun(draft, event);
  const here = ([key]) => key.startsWith(`${event.operation}|`);
  const entries = Object.entries(run.first_pieces ?? {});
  const decided = event.body.what === "go on" ? entries.map((entry) => (here(entry) ? [entry[0], "pass"] : entry)) : entries.filter((entry) => !here(entry));
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
  const same = ([key, call]) => call.run === run && call.tray === tray && call.person === person && call.why === why && !draft.of("answers")[`call|${key}`];
  const [key, open] = Object.entries(calls).find(same) ?? [];
  const call = open ? { ...open, note: note || open.note, step: step || open.step, times: (open.times ?? 1) + 1 } : { why, note, person, at: event.moment, run, tray, step };
  draft.changes.calls = put(calls, key ?? event.id, call);
}

export const HANDLERS = {
  "supply out": supplyOut,
  "supply in": supplyIn,
  "first piece checked": firstPieceChecked,
  "first piece decided": firstPieceDecided,
  "operation given": given,
  "look given": lookGiven,
  "lead called": leadCalled,
};
