// Machines that must be watched, and who was last seen where they can be: mirrors runboard/run/sight.py.

import { stepIn } from "./draft.js";
import { asPerson, isSame } from "./records.js";

const SAYS_NEAR = ["machine started", "watch checked", "watch taken"];

/** Keeps, for each running machine that must be watched, since when everybody was last seen elsewhere. */
export function noteSight(draft, event) {
  if (!Object.keys(draft.people).length && !Object.keys(draft.loads).length) return;
  for (const [key, run] of Object.entries(draft.base.runs ?? {})) {
    if ((draft.heads[key] ?? run).state === "open") draft.openLoads(key).forEach((load) => noteLoad(draft, event, key, load));
  }
}

function noteLoad(draft, event, run, load) {
  const watched = load.state === "running" && stepIn(draft.route(run), load.step)?.attendance === "watched";
  const near = !watched || isSeen(draft, event, load);
  if (near && load.alone_since) draft.putLoad({ ...load, alone_since: null });
  else if (!near && !load.alone_since) draft.putLoad({ ...load, alone_since: event.moment });
}

function isSeen(draft, event, load) {
  if (SAYS_NEAR.includes(event.kind) && event.run === load.run && event.load === load.id) return true;
  const known = Object.entries(draft.base.people ?? {}).map(([key, raw]) => draft.people[key] ?? asPerson(key, raw));
  const people = known.filter((one) => wasSeen(draft, one));
  return !people.length || people.some((person) => isNear(draft, person, load));
}

// Somebody in the book of whom the log says nothing was never seen.
const wasSeen = (draft, person) => Boolean(draft.people[person.key] || person.seen_at);

function isNear(draft, person, load) {
  if (person.away) return false;
  const station = draft.base.stations?.[load.station];
  if (!person.hands) return person.room !== "" && station?.room === person.room;
  const [run, key] = person.hands;
  if (!run) return station?.room === (draft.base.jobs?.[key]?.room || person.room);
  const other = draft.load(run, key);
  return Boolean(other && station?.watch_ok?.includes(other.station));
}
