// What falls due and when, so that a machine started without the network still calls.

import { asLoad, isoAfter, lean } from "./record.js";
import { alertId } from "./shop_answers.js";

/** `made` with its due moments brought up: those that these presses began come in, those they ended go. */
export function redue(before, made) {
  if (made === before) return made;
  try {
    const old = dues(before);
    const fresh = dues(made);
    const told = (before.dues ?? []).map((due) => nextLook(before, made, due));
    const left = told.filter((due) => fresh.has(due.id) || due.again || !(old.has(due.id) || isAnswered(made, due)));
    const kept = left.map((due) => ({ ...due, ...fresh.get(due.id) }));
    const known = new Set(kept.map((due) => due.id));
    const added = [...fresh.values()].filter((due) => !old.has(due.id) && !known.has(due.id));
    return { ...made, dues: [...kept, ...added].sort((one, other) => Date.parse(one.due_at) - Date.parse(other.due_at)) };
  } catch {
    return made;
  }
}

const stays = ({ kind }) => kind.startsWith("care ") || ["watch check", "nobody near"].includes(kind);

/** A machine that only a press says to run is the server's to fold; but that somebody looked is not the last look. */
function nextLook(before, made, due) {
  const seen = due.said && due.kind === "watch check" && !before.answers?.[due.id] && made.answers?.[due.id];
  if (seen?.answer !== "seen") return due;
  return { ...due, due_at: isoAfter(seen.at, stepAt(made.runs?.[due.run] ?? {}, due.step)?.watch_every ?? 5), stage: undefined, again: true };
}

const stepAt = ({ routes = [] }, key, number) => (routes.find((route) => route.number === number) ?? routes.at(-1))?.steps?.find((step) => step.key === key);

const isAnswered = (state, due) =>
  due.kind.startsWith("care ") ? due.id in (state.reminders ?? {}) : Boolean(state.answers?.[due.id]) && state.answers[due.id].answer !== "claimed";

function dues(state) {
  const found = new Map();
  for (const due of all(state)) {
    // A reminder of care is not dismissed by an alert's answer, only by saying what was done; and a machine that must be
    // watched only by watching it.
    const answer = stays(due) ? undefined : state.answers?.[due.id];
    if (!answer || answer.answer === "claimed") found.set(due.id, due);
    else if (answer.ask_again_at && due.kind !== "machine end") {
      const id = alertId("ask again", due.id, answer.ask_again_at);
      if (!state.answers[id]) found.set(id, { ...due, id, kind: "ask again", due_at: new Date(answer.ask_again_at).toISOString() });
    }
  }
  return found;
}

function* all(state) {
  for (const [key, run] of Object.entries(state.runs ?? {})) {
    if (run.state !== "open") continue;
    yield* ofLoads(key, run);
    yield* ofTrays(key, run);
    for (const [supply, until] of Object.entries(run.out ?? {})) {
      if (until) yield { id: alertId("supply due", key, supply, stamp(until)), kind: "supply due", due_at: until, run: key };
    }
  }
  yield* lookEnded(state);
  yield* ofCare(state);
  for (const [key, { out }] of Object.entries(state.stations ?? {})) {
    if (out?.until) yield { id: alertId("station back", key, stamp(out.until)), kind: "station back", due_at: new Date(out.until).toISOString(), station: key };
  }
  for (const [event, { at, run, tray, step, person }] of Object.entries(state.calls ?? {})) {
    yield lean({ id: alertId("call", event), kind: "call", due_at: at, run, tray, step, person });
  }
  for (const [key, person] of Object.entries(state.people ?? {})) {
    if (person.until && person.came_at) {
      const due_at = new Date(Date.parse(person.until) - (person.tidy_up ?? 0) * 60_000).toISOString();
      yield { id: alertId("session end", key, stamp(person.until)), kind: "session end", due_at, person: key };
    }
  }
}

function* ofLoads(run, { loads = {}, routes = [] }) {
  for (const [key, raw] of Object.entries(loads)) {
    const load = asLoad(run, key, raw);
    const about = { run, load: key, step: load.step, station: load.station };
    if (["running", "ended"].includes(load.state) && load.end_at) {
      yield { id: alertId("machine end", run, key, load.ends), kind: "machine end", due_at: load.end_at, ...about };
    }
    const step = stepAt({ routes }, load.step, load.revision);
    if (load.state !== "running" || (step?.attendance ?? "watched") !== "watched") continue;
    const every = step?.watch_every;
    if (load.alone_since) {
      yield { id: alertId("nobody near", run, key, load.ends, stamp(load.alone_since)), kind: "nobody near", due_at: load.alone_since, ...about };
    }
    if (load.checked_at && every) {
      const due_at = new Date(Date.parse(load.checked_at) + every * 60_000).toISOString();
      yield { id: alertId("watch check", run, key, load.ends, load.checks), kind: "watch check", due_at, ...about };
    }
  }
}

/** Reminders that a press of this phone brings on; the server alone says when the next morning is. */
function* ofCare(state) {
  for (const [key, entry] of Object.entries(state.care ?? {})) {
    const [kind, , finish] = key.split("|");
    if (!entry.heats && !state.finishes?.[finish]?.self_heats) continue;
    const about = { run: entry.run, step: entry.step, station: entry.station };
    const wanted = [];
    if (!entry.times) wanted.push({ id: alertId("care start", key, entry.began_by), kind: "care start", due_at: entry.began_at, ...about });
    if (entry.ended_at) wanted.push({ id: alertId("care end", key, entry.ended_by), kind: "care end", due_at: entry.ended_at, ...about });
    if (entry.ended_at && kind === "smoulder") {
      wanted.push({ id: alertId("care again", key, entry.ended_by), kind: "care again", due_at: isoAfter(entry.ended_at, 60), ...about });
    }
    yield* wanted.filter((due) => !(due.id in (state.reminders ?? {})));
  }
}

/** A sensor saw the station stop since its load was started. */
function* lookEnded(state) {
  for (const { load: at, signal } of Object.values(state.stations ?? {})) {
    if (!signal || signal.on || !at || state.runs?.[at[0]]?.state !== "open") continue;
    const [run, key] = at;
    const raw = state.runs[run].loads?.[key];
    if (raw?.state !== "running" || !(Date.parse(signal.at) > Date.parse(raw.phase_at))) continue;
    const load = asLoad(run, key, raw);
    yield { id: alertId("looks ended", run, key, load.ends, stamp(signal.at)), kind: "looks ended", due_at: signal.at, run, load: key, step: load.step, station: load.station };
  }
}

function* ofTrays(run, { trays = {} }) {
  for (const [tray, { rests = {}, holds = [], at = {} }] of Object.entries(trays)) {
    for (const [step, rest] of Object.entries(rests)) {
      if (rest.ended_at || !Object.keys(at).length) continue;
      const occurrence = stamp(rest.began_at);
      yield { id: alertId("wait over", run, tray, step, stamp(rest.ready_at)), kind: "wait over", due_at: rest.ready_at, run, tray, step };
      if (rest.latest_at) yield { id: alertId("wait latest", run, tray, step, occurrence), kind: "wait latest", due_at: rest.latest_at, run, tray, step };
    }
    for (const hold of holds) {
      if (hold.until) yield { id: alertId("hold over", run, tray, hold.step, stamp(hold.until)), kind: "hold over", due_at: hold.until, run, tray, step: hold.step };
    }
  }
}

const stamp = (moment) => Math.floor(Date.parse(moment) / 1000);
