// The state's records: empty fields are left out of the JSON, filled in while they are read, left out again at the end.

const TRAY = { started: 0, revision: 1, at: {}, busy: {}, good: 0, counts: {}, scrap: {}, gone: 0, came: 0, holds: [], rests: {}, places: {}, wood: "", board: "", of: "", print: 0 };
const LOAD = { pieces: {}, people: [], began: {}, watcher: "", started_at: null, phase_at: null, end_at: null, ends: 0, checked_at: null, checks: 0, stop: null, fresh: false, alone_since: null, revision: 0, said: "" };
const PERSON = { came_at: null, until: null, room: "", hands: null, hands_since: null, away: false, seen_at: null, went_at: null, last: "", declined: {}, shown: [], name: "" };
const STATION = { load: null, out: null, setup: null, listed: "", signal: null };

export const asTray = (id, raw) => ({ ...TRAY, ...raw, id });
export const asLoad = (run, id, raw) => ({ ...LOAD, ...raw, id, run });
export const asPerson = (key, raw) => ({ ...PERSON, ...raw, key });
export const asStation = (key, raw) => ({ ...STATION, setups: 0, ...raw, key });

const isEmpty = (value) =>
  value === null || value === undefined || value === "" || value === 0 || value === false || (typeof value === "object" && Object.keys(value).length === 0);

/** The record without its empty fields. */
export const lean = (record) => Object.fromEntries(Object.entries(record).filter(([, value]) => !isEmpty(value)));

const leaned = (shape, { key, ...record }) => Object.fromEntries(Object.entries(record).filter(([name, value]) => !(name in shape && isEmpty(value))));

export const trayRecord = lean;
export const loadRecord = (load) => leaned(LOAD, load);
export const personRecord = (person) => leaned(PERSON, person);
export const stationRecord = (station) => leaned(STATION, station);

/** A copy of a mapping with one key set. */
export const put = (mapping, key, value) => ({ ...mapping, [key]: value });

/** A copy of a mapping that lacks one key. */
export const without = (mapping, key) => {
  const { [key]: gone, ...rest } = mapping ?? {};
  return rest;
};

export const sum = (numbers) => numbers.reduce((total, number) => total + number, 0);
export const isSame = (one, other) => Boolean(one && other && one[0] === other[0] && one[1] === other[1]);
export const iso = (text) => (text ? new Date(text).toISOString() : null);
export const isoAfter = (text, minutes) => new Date(Date.parse(text) + Math.round(minutes * 60_000)).toISOString();

/** The date on the shop's calendar, as 2026-06-01. */
export const localDay = (text, zone) =>
  new Intl.DateTimeFormat("en-CA", { timeZone: zone || "UTC", year: "numeric", month: "2-digit", day: "2-digit" }).format(new Date(text));
