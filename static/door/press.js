// Presses: what a person's press says happened, as drafts of events, which go to the outbox. Nothing here changes the state:
// what was pressed is seen when it comes back from the outbox, laid over it.

import { now } from "./clock.js";
import { pressOf, put } from "./outbox.js";
import { recall, remember } from "./remembered.js";
import { me, seq, shop } from "./shop.js";
import { loadTitle, loadWords, say, sum } from "./words.js";

const REMEMBER = 20;
const OLD_MS = 12 * 3_600_000;

/** Records one press; see `put`. A draft says kind, and where they apply run, load, tray, operation, station, body, person. */
export function press(label, drafts) {
  const id = put(label, drafts.map((draft) => ({ run: "", person: me(), ...draft })), seq());
  write([...read(), { id, label, at: Date.now(), person: me() }]);
  return id;
}

const read = () => JSON.parse(recall("runboard.presses") ?? "[]");
const write = (presses) => remember("runboard.presses", JSON.stringify(presses.slice(-REMEMBER)));

/** The press that 'Undo' takes back: this phone's last, or the person's last from another phone. */
export function lastPress() {
  const mine = read().filter((done) => done.person === me() && Date.now() - done.at < OLD_MS);
  const last = shop()?.people?.[me()]?.last && pressOf(shop().people[me()].last);
  if (last && last !== mine.at(-1)?.id && !read().some((done) => done.id === last) && !undone().includes(last)) {
    return mine.length ? mine.at(-1) : { id: last, label: "", at: 0 };
  }
  return mine.at(-1) ?? null;
}

const undone = () => JSON.parse(recall("runboard.undone") ?? "[]");

export const isUndone = (id) => undone().includes(id);

/** Takes back a whole press. */
export function undo(done, label) {
  forget(done.id);
  remember("runboard.undone", JSON.stringify([...undone(), done.id].slice(-REMEMBER)));
  put(label, [{ run: "", person: me(), kind: "event undone", body: { event: done.id } }], seq());
}

/** A refused press is no press: it is not what 'Undo' takes back. */
export function forget(id) {
  write(read().filter((done) => done.id !== id));
}

export const isoIn = (minutes) => new Date(now() + minutes * 60_000).toISOString();

export const sayTime = (until) => press(say("did-time", { until }), [{ kind: "time said", body: { until } }]);

/** The fields of an event about a load. */
export const about = (load) => ({ run: load.run, load: load.id, operation: load.step, station: load.station, revision: revisionOf(load) });

const revisionOf = (load) => {
  const run = shop()?.runs?.[load.run];
  return run?.trays?.[Object.keys(load.pieces ?? {})[0]]?.revision ?? 0;
};

/** Another person watches now: said by the one who hands over. */
export const handOver = (loads, key, person) =>
  press(say("did-watch", { person: person.name }), loads.map((load) => ({ kind: "watch taken", ...about(load), person: key })));

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
  press(titled("did-running", load), [...before, { kind: "machine started", ...about(load), ...extra, body: { minutes, ...extra.body } }]);

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

function moveDraft(move, alerts = []) {
  if (move.code === "job") return [{ kind: "job started", body: { job: jobOf(move) } }];
  const load = loadOf(move);
  if (move.code === "unload") return [{ kind: "unloading started", ...about(load) }, ...alerts.map((alert) => answer(alert, "ended"))];
  return [startDraft(load)];
}

export const jobOf = (move) => move.id.split("|").pop();

let counted = () => () => {};

/** `look(load, isLate)` is called before each count; what it gives is called with the press that counted. */
export const onCount = (look) => { counted = look; };

/** Ends a load, all good unless counted, and begins the next move with the same press. */
export function finishLoad(run, load, next, { counts, alerts, ...extra } = {}) {
  const done = { kind: "load done", ...about(load), ...extra, body: counts ? { counts } : {} };
  const then = counted(load, Boolean(extra.at || extra.minutesAgo));
  const id = press(doneTitle(run, load, next), [done, ...(next ? moveDraft(next, alerts) : [])]);
  then(id);
  return id;
}

const doneTitle = (run, load, next) => {
  const done = say("did-done", { load: loadTitle(run, load) });
  return next ? `${done}. ${nextWords(load, next)}` : done;
};

// What this phone remembers of presses

const listed = () => JSON.parse(recall("runboard.listed") ?? "[]");
const keyOf = ({ run, id }) => `${run}/${id}`;

/** Whether it was said on this phone that all is as listed for a load by hand at a cutter. */
export const isListed = (load) => listed().includes(keyOf(load));
export const noteListed = (load) => remember("runboard.listed", JSON.stringify([...listed(), keyOf(load)].slice(-REMEMBER)));

/** What a person left when they were called away: [run, load], or null. */
export const leftAt = () => JSON.parse(recall("runboard.left") ?? "null");
export const noteLeft = (load) => remember("runboard.left", JSON.stringify(load ? [load.run, load.id] : null));
