// The presses of ordinary work on a load, each with the words that say what it did.

import { loadTitle, loadWords, stepOf, sum } from "./names.js";
import { press } from "./press.js";
import { shop } from "./shop.js";
import { say } from "./words.js";

/** The envelope fields of a load. */
export const about = (load) => ({ run: load.run, load: load.id, operation: load.step, station: load.station, revision: revisionOf(load) });

const revisionOf = (load) => {
  const run = shop()?.runs?.[load.run];
  return run?.trays?.[Object.keys(load.pieces ?? {})[0]]?.revision ?? 0;
};

/** A move as the load that it would begin. */
export const loadOf = (move) => ({ id: move.load, run: move.run, step: move.step, station: move.station, pieces: move.pieces ?? {}, places: move.places });

const runOf = (load) => shop()?.runs?.[load.run];
const titled = (id, load, facts = {}) => say(id, { load: loadTitle(runOf(load), load), ...facts });

export const startDraft = (load, extra = {}) => ({ kind: "load started", ...about(load), ...extra, body: { pieces: load.pieces, ...textsOf(load), ...extra.body } });

// From where pieces are personal, the move says which text goes on which position.
const textsOf = (load) => (load.places && Object.keys(load.places).length ? { places: load.places } : {});

/** Starts a load, or goes on with one. `extra` may hold minutesAgo, at, body. */
export const startLoad = (load, extra) => press(titled("did-started", load), [startDraft(load, extra)]);

export const startMachine = (load, minutes, extra = {}, before = []) =>
  press(titled("did-running", load), [...before, { kind: "machine started", ...about(load), ...extra, body: { minutes } }]);

/** At it: the alert, if one rings for this load, is answered with the same press. */
export const startUnloading = (load, alerts = []) =>
  press(titled("did-at-it", load), [{ kind: "unloading started", ...about(load) }, ...alerts.map((alert) => answer(alert, "ended"))]);

export const answer = (alert, what, body = {}) => ({
  kind: "alert answered", run: alert.run ?? "", load: alert.load ?? "", tray: alert.tray ?? "", station: alert.station ?? "",
  body: { alert: alert.id, answer: what, ...body },
});

/** What a load still has to be counted: {good, scrap} with what was counted of it before. */
export function counting(run, load) {
  let scrap = 0;
  for (const tray of Object.keys(load.pieces ?? {})) scrap += run.trays?.[tray]?.counts?.[load.step]?.[load.id]?.[1] ?? 0;
  return { good: sum(load.pieces) - scrap, scrap };
}

/** 'Done, all 5 good' or 'Done, 4 good, 1 scrap' */
export function doneWords(run, load) {
  const { good, scrap } = counting(run, load);
  return scrap ? say("done-some", { good, scrap }) : say("done-all", { good });
}

/** The words for what the next move begins: 'Start tray 5' at the same step, 'Start Engrave, tray 5' elsewhere. */
export function nextWords(load, move) {
  if (move.code === "job") return say("then-job", { job: move.facts?.job ?? "" });
  const run = shop()?.runs?.[move.run];
  if (move.code === "unload") return say("then-at-it", { station: shop()?.stations?.[move.station]?.name ?? "" });
  const same = move.run === load.run && move.step === load.step;
  const what = same ? loadWords(run, move) : loadTitle(run, loadOf(move));
  return say(move.code === "go on" ? "then-go-on" : "then-start", { what });
}

export function moveDraft(move, alerts = []) {
  if (move.code === "job") return [{ kind: "job started", body: { job: jobOf(move) } }];
  const load = loadOf(move);
  if (move.code === "unload") return [{ kind: "unloading started", ...about(load) }, ...alerts.map((alert) => answer(alert, "ended"))];
  return [startDraft(load)];
}

export const jobOf = (move) => move.id.split("|").pop();

/** Ends a load, all good unless counted, and begins the next move with the same press. */
export function finishLoad(run, load, next, { counts, alerts, ...extra } = {}) {
  const done = { kind: "load done", ...about(load), ...extra, body: counts ? { counts } : {} };
  return press(doneTitle(run, load, next), [done, ...(next ? moveDraft(next, alerts) : [])]);
}

const doneTitle = (run, load, next) => {
  const done = say("did-done", { load: loadTitle(run, load) });
  return next ? `${done}. ${nextWords(load, next)}` : done;
};

export const stepFor = (load) => stepOf(runOf(load), load.step, Object.keys(load.pieces ?? {})[0]);
