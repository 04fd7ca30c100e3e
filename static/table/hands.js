// Hands and stations: who is at which load; a person and a station are in one place at a time.

import { isSame, put, without } from "./record.js";

/** The person's hands are at `load` now and nowhere else; a second person joins. */
export function takeHands(draft, load, event) {
  freeHands(draft, event.person);
  const fresh = draft.load(load.run, load.id) ?? load;
  if (!event.person) return fresh;
  const person = draft.person(event.person);
  const room = draft.base.stations?.[load.station]?.room ?? person.room;
  draft.putPerson({ ...person, hands: [load.run, load.id], hands_since: event.moment, away: false, room, seen_at: event.moment });
  return { ...fresh, people: [...fresh.people.filter((person) => person !== event.person), event.person], began: put(fresh.began, event.person, event.id) };
}

/** Whatever the person's hands were at, they leave it. A load keeps its station. */
export function freeHands(draft, key) {
  const person = draft.person(key);
  if (!person.hands) return;
  const load = person.hands[0] ? draft.load(...person.hands) : null;
  if (load) draft.putLoad({ ...load, people: load.people.filter((person) => person !== key), began: without(load.began, key) });
  draft.putPerson({ ...person, hands: null, hands_since: null });
}

/** The person was last seen where `load` is. */
export function standBy(draft, key, load) {
  const room = draft.base.stations?.[load.station]?.room;
  if (key && room !== undefined) draft.putPerson({ ...draft.person(key), room, away: false });
}

/** The person's hands leave `load` if they are at it. */
export function unhand(draft, key, load) {
  const person = draft.person(key);
  if (isSame(person.hands, [load.run, load.id])) draft.putPerson({ ...person, hands: null, hands_since: null });
}

/** The station that `load` held is free. */
export function leaveStation(draft, load) {
  const station = draft.station(load.station);
  if (isSame(station.load, [load.run, load.id])) draft.putStation({ ...station, load: null });
}
