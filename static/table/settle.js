// A press that did not fit, made to fit because a person said so.

import { Refused } from "./draft.js";
import { isSame } from "./record.js";

/** Applies `event` although it did not fit: what holds the station is taken off, counts shrink to what is there. */
export function force(draft, entry, event, take) {
  if (entry.code === "station busy") clearStation(draft, entry, event, take);
  const short = ["counts do not fit", "pieces not there"].includes(entry.code);
  const there = entry.facts?.there ?? 0;
  if (short && there <= 0) throw new Refused(entry.code, entry.facts);
  take(draft, short ? { ...event, body: shrunk({ ...event.body }, there) } : event);
}

function clearStation(draft, entry, event, take) {
  const { run, load } = entry.facts;
  const held = draft.load(run, load);
  if (held && isSame(draft.station(held.station).load, [run, load])) {
    // Nobody takes a load off a running machine by settling a press.
    if (held.state === "running") throw new Refused("machine runs", { station: draft.station(held.station).name ?? held.station, trays: Object.keys(held.pieces) });
    take(draft, { ...event, kind: "load taken off", run, load, operation: held.step, body: {} });
  }
}

/** The body with its pieces and counts cut down to what there is. */
function shrunk(body, there) {
  if ("good" in body) {
    const scrap = (body.scrap ?? []).reduce((total, reason) => total + reason.pieces, 0);
    body.good = Math.max(0, Math.min(body.good, there - scrap));
  }
  if (typeof body.pieces === "object") body.pieces = each(body.pieces, (pieces) => Math.min(pieces, there));
  else if ("pieces" in body) body.pieces = Math.min(body.pieces, there);
  if ("counts" in body) body.counts = each(body.counts, (count) => shrunk({ ...count }, there));
  return body;
}

const each = (mapping, make) => Object.fromEntries(Object.entries(mapping).map(([key, value]) => [key, make(value)]));
