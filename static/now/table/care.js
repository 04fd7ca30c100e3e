// What must not be forgotten: rags, oily dust, a cut that burnt. Mirrors the first half of runboard/run/care.py.

import { indexIn, stepIn } from "./draft.js";
import { localDay, put } from "./records.js";

const NOT_BEGUN = ["none", "done", "off"];

/** Keeps what this event means for care. */
export function noteCare(draft, event) {
  const run = draft.base.runs?.[event.run];
  if (!run || (!Object.keys(draft.loads).length && !Object.keys(draft.trays).length)) return;
  const before = Object.fromEntries(Object.entries(run.loads ?? {}).filter(([, load]) => !NOT_BEGUN.includes(load.state)));
  for (const key of new Set([...Object.keys(before), event.load])) {
    const load = key ? draft.load(event.run, key) : null;
    if (load) noteLoad(draft, event, before[key], load);
  }
  if (isBurnt(event)) noteBurn(draft, event);
}

function noteLoad(draft, event, before, load) {
  const wasOpen = Boolean(before);
  const isOpen = !NOT_BEGUN.includes(load.state);
  const { loads = {}, past = {} } = draft.base.runs[event.run];
  const countedAgain = !wasOpen && !isOpen && (load.id in loads || load.id in past || load.state !== "done" || wasCounted(draft, event, load));
  if (wasOpen === isOpen && (isOpen || countedAgain)) return;
  const [kind, finish] = ofStep(draft, load);
  if (kind) keep(draft, event, `${kind}|${localDay(event.moment, draft.base.shop?.zone)}|${finish}`, load, !wasOpen, !isOpen);
}

// The page does not hear of loads that are done: it knows them by their counts.
const wasCounted = (draft, event, load) =>
  Object.values(draft.base.runs[event.run].trays ?? {}).some((tray) => tray.counts?.[load.step]?.[load.id]);

function ofStep(draft, load) {
  const route = draft.route(load.run);
  const step = stepIn(route, load.step);
  const kind = draft.base.stations?.[load.station]?.kind;
  if (!step || !kind) return ["", ""];
  if (step.finish || kind === "finishing") return ["rags", step.finish ?? ""];
  if (kind !== "sander") return ["", ""];
  const coated = route.slice(0, indexIn(route, step.key)).reverse().find((one) => one.finish || draft.base.stations?.[one.station]?.kind === "finishing");
  return coated ? ["dust", coated.finish ?? ""] : ["", ""];
}

function keep(draft, event, key, load, begins, ends) {
  const kept = draft.of("care");
  const entry = { began_at: event.moment, times: 0, loads: 0, ...kept[key], run: load.run, step: load.step, station: load.station, ended_at: "" };
  entry.loads = Math.max(0, entry.loads + Number(begins) - Number(ends));
  if (!entry.loads) Object.assign(entry, { ended_at: event.moment, times: entry.times + 1 });
  draft.changes.care = put(kept, key, entry);
}

function isBurnt({ body }) {
  const said = [body.scrap ?? [], ...Object.values(body.counts ?? {}).map((one) => one.scrap ?? [])];
  return said.flat().some((one) => one.why === "burnt");
}

const DUSTY = ["cnc", "hand cutter", "sander"];

function noteBurn(draft, event) {
  const load = event.load ? draft.load(event.run, event.load) : null;
  const step = stepIn(draft.route(event.run), load?.step ?? event.operation);
  const station = load?.station ?? step?.station;
  if (!step || !DUSTY.includes(draft.base.stations?.[station]?.kind)) return;
  const kept = draft.of("care");
  const key = `smoulder|${localDay(event.moment, draft.base.shop?.zone)}|${station}`;
  const entry = { began_at: event.moment, times: 0, loads: 0, ...kept[key], run: event.run, step: step.key, station, ended_at: event.moment };
  draft.changes.care = put(kept, key, { ...entry, times: entry.times + 1 });
}
