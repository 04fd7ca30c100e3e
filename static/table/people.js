// What people's own presses do: they come, go, are called away, take up a small job, decline a move.

import { freeHands } from "./hands.js";
import { isSame, iso, put } from "./record.js";

const change = (draft, event, changes) => draft.putPerson({ ...draft.person(event.person), ...changes });

function came(draft, event) {
  const person = draft.person(event.person);
  const { until, room, name } = event.body;
  const said = { until: iso(until) ?? person.until, room: room || person.room, name: name || person.name };
  change(draft, event, { ...said, came_at: person.came_at ?? event.moment, away: false });
}

function went(draft, event) {
  freeHands(draft, event.person);
  change(draft, event, { came_at: null, until: null, room: "", away: false, declined: {}, went_at: event.moment });
}

function calledAway(draft, event) {
  freeHands(draft, event.person);
  change(draft, event, { away: true });
}

function saidTime(draft, event) {
  change(draft, event, { came_at: draft.person(event.person).came_at ?? event.moment, until: iso(event.body.until) });
}

function startedJob(draft, event) {
  freeHands(draft, event.person);
  change(draft, event, { hands: ["", event.body.job], hands_since: event.moment, away: false });
}

function didJob(draft, event) {
  if (isSame(draft.person(event.person).hands, ["", event.body.job])) change(draft, event, { hands: null, hands_since: null });
}

function declined(draft, event) {
  const { move, until } = event.body;
  change(draft, event, { declined: put(draft.person(event.person).declined, move, until || "") });
}

function shown(draft, event) {
  const person = draft.person(event.body.person);
  if (!person.shown.includes(event.station)) draft.putPerson({ ...person, shown: [...person.shown, event.station] });
}

export const HANDLERS = {
  "person came": came,
  "person went": went,
  "person called away": calledAway,
  "person came back": (draft, event) => change(draft, event, { away: false }),
  "time said": saidTime,
  "job started": startedJob,
  "job done": didJob,
  "move declined": declined,
  "shown how": shown,
};
