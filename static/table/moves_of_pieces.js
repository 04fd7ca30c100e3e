// Pieces that change trays or go back in the route, and what is noted of a tray.

import { Refused, indexIn, stepIn } from "./draft.js";
import { shift, takeOut } from "./pieces.js";
import { asTray, lean, put } from "./record.js";

/** One event moves pieces: split, merge, borrow, fill, rework. They never move forward in the route this way. */
export function move(draft, event) {
  const { run, tray: sourceKey, body } = event;
  const { to: targetKey, pieces, to_operation: toStep } = body;
  const before = draft.tray(run, sourceKey);
  const route = draft.routeOf(run, sourceKey);
  const to = indexIn(route, toStep);
  const from = event.operation ? indexIn(route, event.operation) : Infinity;
  if (to < 0 || from < 0) throw new Refused("step unknown", { step: to < 0 ? toStep : event.operation, tray: sourceKey });
  if (!(pieces > 0)) throw new Refused("nothing to move", { tray: sourceKey });
  if (to > from) throw new Refused("moves only back", { tray: sourceKey, step: route[from].name, to_step: route[to].name });
  if (targetKey === sourceKey && to === from) throw new Refused("same tray", { tray: sourceKey });
  takeOut(draft, run, sourceKey, event.operation, pieces);
  if (!draft.hasTray(run, targetKey)) {
    draft.putTray(run, asTray(targetKey, { revision: before.revision, wood: before.wood, board: before.board, of: sourceKey }));
  }
  if (!stepIn(draft.routeOf(run, targetKey), toStep)) throw new Refused("step unknown", { step: toStep, tray: targetKey });
  if (targetKey !== sourceKey) carry(draft, event, route, to);
  draft.putTray(run, shift(draft.tray(run, targetKey), toStep, pieces));
}

function carry(draft, event, route, to) {
  const { run, body } = event;
  const source = draft.tray(run, event.tray);
  const target = draft.tray(run, body.to);
  const personalFrom = route.findIndex((step) => step.personal);
  const places = carryPlaces(source, target, body.positions ?? [], personalFrom >= 0 && to > personalFrom);
  draft.putTray(run, { ...source, gone: source.gone + body.pieces, places: places.kept });
  draft.putTray(run, { ...target, came: target.came + body.pieces, places: places.moved, rests: carryRest(source, target, event) });
}

/** Personal pieces take their texts along, unless they go back to before they were personal. */
function carryPlaces(source, target, positions, stayPersonal) {
  const going = positions.map(String).filter((place) => source.places[place]);
  const kept = Object.fromEntries(Object.entries(source.places).filter(([place]) => !going.includes(place)));
  const moved = { ...target.places };
  for (const place of stayPersonal ? going : []) {
    moved[moved[place] ? Math.max(...Object.keys(moved).map(Number)) + 1 : place] = source.places[place];
  }
  return { kept, moved };
}

/** Pieces that are waiting take their wait along; of two waits the later end holds. */
function carryRest(source, target, event) {
  let { rests } = target;
  for (const [step, rest] of Object.entries(source.rests)) {
    const waits = !rest.ended_at && Date.parse(rest.ready_at) > Date.parse(event.moment);
    if (waits && event.operation === event.body.to_operation) rests = put(rests, step, later(rests[step], rest));
  }
  return rests;
}

const earliest = (moments) => moments.filter(Boolean).sort((one, other) => Date.parse(one) - Date.parse(other));

function later(old, fresh) {
  if (!old || old.ended_at) return fresh;
  return lean({
    why: fresh.why,
    began_at: earliest([old.began_at, fresh.began_at])[0],
    ready_at: earliest([old.ready_at, fresh.ready_at]).at(-1),
    latest_at: earliest([old.latest_at, fresh.latest_at])[0],
    revision: fresh.revision,
  });
}

/** Which text is at which position: what is said replaces those positions. */
export function place(draft, run, trayKey, placed) {
  const tray = draft.tray(run, trayKey);
  const places = { ...tray.places };
  for (const { position, line, text } of placed) {
    if (line === "-") delete places[position];
    else places[position] = [line, text];
  }
  draft.putTray(run, { ...tray, places });
}

/** Wood and board, texts, prints of a tray. */
export function note(draft, { kind, run, tray: key, body }) {
  const tray = draft.tray(run, key);
  if (kind === "texts placed") place(draft, run, key, body.places ?? []);
  else if (kind === "card printed") draft.putTray(run, { ...tray, print: body.print });
  else draft.putTray(run, { ...tray, wood: body.wood ?? tray.wood, board: body.board ?? tray.board });
}
