// What must not be forgotten: rags, oily dust, a cut that burnt. Mirrors the first half of runboard/run/care/care.py.

import { indexIn, stepIn } from "./draft.js";
import { stepOf, traysOf } from "./names.js";
import { localDay, put, sum } from "./record.js";

const OVER = ["done", "off"];
// Kinds of press that say that work was begun or done at a step.
const SAYS_WORK = ["load started", "machine started", "machine ended", "unloading started", "load done", "pieces counted"];

/** Keeps what this event means for care, however it came in. */
export function noteCare(draft, event) {
  const run = draft.base.runs?.[event.run];
  if (!run || (!Object.keys(draft.loads).length && !Object.keys(draft.trays).length)) return;
  const marks = new Map();
  const before = Object.fromEntries(Object.entries(run.loads ?? {}).filter(([, load]) => !OVER.includes(load.state)));
  for (const key of new Set([...Object.keys(before), event.load])) {
    const load = key ? draft.load(event.run, key) : null;
    const [wasOpen, isOpen] = [key in before, Boolean(load) && !OVER.includes(load.state)];
    if (load && wasOpen !== isOpen) mark(marks, draft, event, draft.stepOfLoad(load), load.station, { begins: Number(isOpen), ends: Number(wasOpen) });
  }
  for (const [key, tray] of Object.entries(draft.trays[event.run] ?? {})) {
    const route = draft.routeOf(event.run, key);
    for (const step of countedMore(run.trays?.[key], tray)) mark(marks, draft, event, stepIn(route, step), "");
  }
  marks.forEach((mark, key) => keep(draft, event, key, mark));
  if (isBurnt(event)) noteBurn(draft, event);
}

/** A press that does not fit may be true all the same: what it says was coated is asked about at once. */
export function noteUnfitCare(draft, event) {
  const run = draft.base.runs?.[event.run];
  if (!run || !SAYS_WORK.includes(event.kind)) return;
  const marks = new Map();
  const { pieces = {}, counts = {} } = event.body;
  const named = [event.tray, ...Object.keys(pieces), ...Object.keys(counts), ...Object.keys(run.boards?.[event.load] ?? {}), ...traysOf(event.load)];
  const trays = named.filter((id) => draft.hasTray(event.run, id));
  const ways = trays.length ? trays.map((tray) => [draft.routeOf(event.run, tray), run.trays[tray].at ?? {}]) : [[draft.route(event.run), {}]];
  for (const [route, at] of ways) {
    const last = indexIn(route, event.operation || stepOf(event.load));
    const first = route.findIndex((step) => step.key in at);
    route.filter((step, index) => index === last || (first >= 0 && first <= index && index < last)).forEach((step) => mark(marks, draft, event, step, ""));
  }
  marks.forEach((mark, key) => keep(draft, event, key, mark));
}

function countedMore(old, tray) {
  const total = (counts) => sum(Object.values(counts ?? {}).flat());
  return Object.keys(tray.counts ?? {}).filter((step) => total(tray.counts[step]) > total(old?.counts?.[step]));
}

/** What a step leaves behind is said by the server; another station than the step's may leave another thing. */
function mark(marks, draft, event, step, at, { begins = 0, ends = 0 } = {}) {
  const left = step?.leaves;
  if (!left) return;
  const key = `${left.what}|${localDay(event.moment, draft.base.shop?.zone)}|${left.finish ?? ""}`;
  const known = marks.get(key) ?? { run: event.run, step: step.key, station: at || step.station, heats: false, begins: 0, ends: 0 };
  marks.set(key, { ...known, heats: known.heats || Boolean(left.heats), begins: known.begins + begins, ends: known.ends + ends });
}

function keep(draft, event, key, { run, step, station, heats, begins, ends }) {
  const kept = draft.of("care");
  if (kept[key]?.heats && !heats) return; // what heats by itself is asked about as it was, and this coat not at all
  const entry = { began_at: event.moment, began_by: event.id, times: 0, loads: 0, ...kept[key], run, step, station, last_by: event.id, heats };
  entry.loads = Math.max(0, entry.loads + begins - ends);
  if (entry.loads) Object.assign(entry, { ended_at: "", ended_by: "" });
  else Object.assign(entry, { ended_at: event.moment, ended_by: event.id, times: entry.times + 1 });
  draft.changes.care = put(kept, key, entry);
}

function isBurnt({ body }) {
  const said = [body.scrap ?? [], ...Object.values(body.counts ?? {}).map((count) => count.scrap ?? [])];
  return said.flat().some((reason) => reason.why === "burnt");
}

function noteBurn(draft, event) {
  const load = event.load ? draft.load(event.run, event.load) : null;
  const step = load ? draft.stepOfLoad(load) : event.tray ? stepIn(draft.routeOf(event.run, event.tray), event.operation) : null;
  const station = load?.station ?? step?.station;
  if (!step || !draft.base.stations?.[station]?.dusty) return;
  const key = `smoulder|${localDay(event.moment, draft.base.shop?.zone)}|${station}`;
  keep(draft, event, key, { run: event.run, step: step.key, station, heats: true, begins: 0, ends: 0 });
}
