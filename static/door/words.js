// The sentences: one Fluent catalogue, the same file that the server reads; and the names of things in the state.

import { FluentBundle, FluentResource } from "../vendor/fluent-bundle-0.19.1.js";
import { moment } from "./clock.js";
import { redraw } from "./screen.js";

const bundle = new FluentBundle("en", { useIsolating: false });
const NBSP = "\u00a0";
const UNITS = /(\d) (?=(?:h|min|s|mm|days?)\b)/g; // no line ends between a number and its unit
const ISO = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

const read = new Map();

/** Reads a part of the catalogue once: 'en', or 'en.sheets' for what only sheets and Trays say. */
export function openWords(part = "en") {
  if (!read.has(part)) {
    const wish = fetch(`/static/words/${part}.ftl`).then(async (answer) => {
      if (!answer.ok) throw new Error(`no words ${part}`);
      bundle.addResource(new FluentResource(await answer.text()));
    });
    read.set(part, wish.catch((error) => { read.delete(part); throw error; }));
  }
  return read.get(part);
}

/** Wishes for a part of the catalogue; the page is drawn again when it comes. */
export function wishFor(part) {
  if (!read.has(part)) openWords(part).then(redraw, () => {});
}

/** The sentence for an id of a part that comes later; '' while it is on its way. */
export function sayLater(part, id, facts) {
  if (knows(id)) return say(id, facts);
  wishFor(part);
  return "";
}

export const slug = (code) => String(code).replaceAll(" ", "-");
export const knows = (id) => bundle.hasMessage(id);

/** 'a, b and c' */
export const list = (words) => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`);

// A fact that is a list of trays is named as trays are.
const ready = ([name, value]) => [name, name === "trays" && Array.isArray(value) ? trayWords(value) : readable(value)];

function readable(value) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return list(value.map(readable));
  if (typeof value === "string") return ISO.test(value) ? moment(value) : value.replace(/ (?=\d+(?:,|$))/g, NBSP); // 'Sand 120' stays together
  if (typeof value === "number") return value;
  return typeof value === "object" ? list(Object.keys(value)) : String(value);
}

/** The sentence for an id, filled with facts; ISO moments become the shop's local time. */
export function say(id, facts = {}) {
  const message = bundle.getMessage(id);
  if (!message?.value) return id;
  return bundle.formatPattern(message.value, Object.fromEntries(Object.entries(facts ?? {}).map(ready)), []).replace(UNITS, `$1${NBSP}`);
}

/** The sentence for a code of a family, '' where nobody wrote one. */
export function sayCode(family, code, facts) {
  const id = `${family}-${slug(code ?? "")}`;
  return code && knows(id) ? say(id, facts) : "";
}

/** Why a press was refused: the catalogue's sentence, else the server's, else the code itself. */
export const sayRefused = (answer) =>
  sayCode("refused", answer.code, answer.facts) || answer.sentence || say("refused-other", { code: answer.code ?? "" });

/** Trays in their order: 1, 2, 10, 4a after 4. */
export const inOrder = (ids) =>
  [...ids].sort((one, other) => parseInt(one, 10) - parseInt(other, 10) || String(one).localeCompare(String(other)));

export const routeOf = (run, tray) => {
  const revision = run?.trays?.[tray]?.revision ?? run?.routes?.at(-1)?.number;
  return (run?.routes?.find((route) => route.number === revision) ?? run?.routes?.at(-1))?.steps ?? [];
};

export const stepOf = (run, key, tray) =>
  routeOf(run, tray).find((step) => step.key === key) ??
  run?.routes?.flatMap((route) => route.steps).find((step) => step.key === key);

/** A load's step, by the route that the load began by. */
export const stepOfLoad = (run, load) =>
  run?.routes?.find((route) => route.number === load.revision)?.steps.find((step) => step.key === load.step) ?? stepOf(run, load.step, Object.keys(load.pieces ?? {})[0]);

export const stationName = (state, key) => state.stations?.[key]?.name ?? key ?? "";
export const roomName = (state, key) => state.rooms?.[key] ?? key ?? "";
export const personName = (state, key) => state.people?.[key]?.name ?? say("ui-somebody");

const MOST_NAMED = 5;

/** 'tray 4', 'trays 4 to 6', 'trays 1, 3 and 5 to 8', '8 trays'; as `trays_in_words` of the server. */
export function trayWords(ids) {
  const rows = [];
  for (const id of inOrder(ids)) {
    const row = rows.at(-1);
    if (row && Number(id) === Number(row.at(-1)) + 1) row.push(id);
    else rows.push([id]);
  }
  if (ids.length === 1) return say("ui-tray", { tray: ids[0] });
  const named = rows.flatMap((row) => (row.length < 3 ? row : [say("ui-from-to", { from: row[0], to: row.at(-1) })]));
  return named.length > MOST_NAMED ? say("ui-trays-count", { count: ids.length }) : say("ui-trays", { trays: list(named) });
}

/** What a load is called: 'board 2', 'jig-full 2, tray 4', 'trays 4 to 6'. */
export function loadWords(run, { id = "", load = id, step, pieces = {}, trays }) {
  const ids = trays ?? Object.keys(pieces);
  const size = stepOf(run, step, ids[0])?.size;
  const number = load.split("/")[1] ?? "";
  if (size === "board" && isBoard(run, number)) return say("ui-board", { board: number });
  return ids.length ? trayWords(ids) : "";
}

// What is cut again of a board goes by its trays.
const isBoard = (run, number) => Object.keys(run?.boards ?? {}).some((key) => key.split("/")[1] === number);

/** 'Sand 120, tray 4' */
export const loadTitle = (run, load) =>
  [stepOfLoad(run, load)?.name ?? load.step, loadWords(run, load)].filter(Boolean).join(", ");

/** What an order line is called: its text, and for whom. */
export const lineWords = ({ text, whom, line }) => [text, whom].filter(Boolean).join(" ") || line;

export const sum = (pieces) => Object.values(pieces ?? {}).reduce((total, count) => total + count, 0);
