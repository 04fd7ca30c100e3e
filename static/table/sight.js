// Machines that must be watched, and who was last seen where they can be: mirrors runboard/run/care/sight.py.

import { asPerson } from "./record.js";

/** Keeps, for each running machine that must be watched, from when nobody counts as near. */
export function noteSight(draft, event) {
  if (!Object.keys(draft.people).length && !Object.keys(draft.loads).length) return;
  for (const [key, run] of Object.entries(draft.base.runs ?? {})) {
    if ((draft.heads[key] ?? run).state === "open") draft.openLoads(key).forEach((load) => noteLoad(draft, event, load));
  }
}

function noteLoad(draft, event, load) {
  const alone_since = mustBeWatched(draft, load) ? aloneSince(draft, event.moment, load) : null;
  if (alone_since !== load.alone_since) draft.putLoad({ ...load, alone_since });
}

/** Whether somebody must watch this load's machine now. */
export const mustBeWatched = (draft, load) => load.state === "running" && (draft.stepOfLoad(load)?.attendance ?? "watched") === "watched";

/** From when nobody counts as near; ahead where it is the end of somebody's session. */
function aloneSince(draft, moment, load) {
  const people = Object.entries(draft.base.people ?? {}).map(([key, raw]) => draft.people[key] ?? asPerson(key, raw)).filter((person) => wasSeen(draft, person));
  const ends = people.filter((person) => isNear(draft, person, load)).map((person) => nearUntil(draft, person, load));
  if (!people.length || ends.includes(null)) return null;
  const gone = ends.length ? Math.max(...ends) : Date.parse(moment);
  const old = load.alone_since ? Date.parse(load.alone_since) : Infinity;
  return old <= Date.parse(moment) && gone <= Date.parse(moment) ? load.alone_since : new Date(gone).toISOString();
}

// Somebody in the book of whom the log says nothing was never seen.
const wasSeen = (draft, person) => Boolean(draft.people[person.key] || person.seen_at);

/** Until when a person counts as near: to the end of their session; who looked after it, until the next look. */
function nearUntil(draft, person, load) {
  if (!person.until) return null;
  const until = Date.parse(person.until);
  const looked = load.checked_at && load.watcher === person.key ? Date.parse(load.checked_at) : -Infinity;
  const every = until > looked ? 0 : draft.stepOfLoad(load)?.watch_every;
  return every ? looked + every * 60_000 : until;
}

function isNear(draft, person, load) {
  if (person.away) return false;
  return person.hands ? atHand(draft, person, load) : person.room !== "" && draft.base.stations?.[load.station]?.room === person.room;
}

/** Whether this person may watch a machine as far as their hands go: free, or where it may be watched from. */
export function atHand(draft, person, load) {
  if (!person.hands) return true;
  const station = draft.base.stations?.[load.station];
  const [run, key] = person.hands;
  if (!run) return station?.room === (draft.base.jobs?.[key]?.room || person.room);
  const other = draft.load(run, key);
  return Boolean(other && station?.watch_ok?.includes(other.station));
}
