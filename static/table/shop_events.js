// What happens to stations, alerts and questions, whoever's run it is.

import { Refused } from "./draft.js";
import { asLoad, iso, isoAfter, localDay, put, without } from "./record.js";
import { noteAnswer } from "./shop_answers.js";
import { mustBeWatched } from "./sight.js";

function theStation(draft, event) {
  if (!draft.base.stations?.[event.station]) throw new Refused("station unknown", { station: event.station });
  return draft.station(event.station);
}

const change = (draft, event, changes) => draft.putStation({ ...theStation(draft, event), ...changes });

/** A new cutter, wood, focus or jig seat: what is on the station is fresh again. */
function setupChanged(draft, event) {
  const station = theStation(draft, event);
  draft.putStation({ ...station, setups: station.setups + 1 });
  const load = station.load ? draft.load(...station.load) : null;
  if (load) draft.putLoad({ ...load, fresh: true });
}

/** The full list holds for the day, the setup and the person that ticked it. */
function ticked(draft, event) {
  const station = theStation(draft, event);
  if (event.body.list !== "full") return;
  draft.putStation({ ...station, listed: `${localDay(event.moment, draft.base.shop?.zone)}|${station.setups}|${event.person}` });
  const load = station.load ? draft.load(...station.load) : null;
  if (load) draft.putLoad({ ...load, fresh: false });
}

/** One answer stops the alert everywhere. 'Still running' moves the machine's end. */
function answered(draft, event) {
  const { alert, answer } = event.body;
  const [kind, run, key, step] = alert.split("|");
  const again = askAgainAt(draft, event, ...alert.replace(/^ask again\|/, "").split("|").slice(1, 3));
  noteAnswer(draft, alert, answer, event, again);
  const call = alert.replace(/^call\|/, "");
  if (draft.of("calls")[call]) draft.changes.calls = without(draft.of("calls"), call);
  if (kind === "wait over" && answer === "still running" && again) notDryYet(draft, run, key, step, iso(again));
  const load = kind === "machine end" && answer === "still running" && again && key !== undefined ? draft.load(run, key) : null;
  if (load?.state === "running") draft.putLoad({ ...load, end_at: iso(again), ends: load.ends + 1 });
}

/** A wait that somebody found not over goes on until then; nothing is offered before. */
function notDryYet(draft, run, key, step, until) {
  if (!draft.base.runs?.[run] || !draft.hasTray(run, key)) return;
  const tray = draft.tray(run, key);
  const rest = tray.rests[step];
  if (rest && !rest.ended_at && Date.parse(rest.ready_at) < Date.parse(until)) draft.putTray(run, { ...tray, rests: put(tray.rests, step, { ...rest, ready_at: until }) });
}

/** When to ask again: as was said, but about a machine that runs and must be watched in half an hour at the latest. */
function askAgainAt(draft, event, run, key) {
  const { ask_again_at: again } = event.body;
  const load = key === undefined ? null : draft.base.said_running?.[`${run}|${key}`] ?? (draft.base.runs?.[run] && draft.load(run, key));
  const latest = isoAfter(event.moment, 30);
  return again && load && mustBeWatched(draft, asLoad(run, key, load)) && Date.parse(again) > Date.parse(latest) ? latest : again;
}

/** A reminder of care is answered with what was done. */
function reminded(draft, event) {
  const { reminder, done } = event.body;
  draft.changes.reminders = put(draft.of("reminders"), reminder, { done, person: event.person, at: event.moment });
}

function claimed(draft, event) {
  if (!draft.of("answers")[event.body.alert]) noteAnswer(draft, event.body.alert, "claimed", event);
}

export const HANDLERS = {
  "station out of use": (draft, event) => change(draft, event, { out: { why: event.body.why ?? "", until: event.body.until ?? "" } }),
  "station back in use": (draft, event) => change(draft, event, { out: null }),
  "setup changed": setupChanged,
  "checklist ticked": ticked,
  "alert answered": answered,
  "alert claimed": claimed,
  "reminder answered": reminded,
  "restart answered": (draft, event) => { draft.changes.asks = without(draft.of("asks"), event.body.restart); },
};
