// The names of things in the state: steps, stations, rooms, trays, loads.

import { list, say } from "./words.js";

/** Trays in their order: 1, 2, 10, 4a after 4. */
export const inOrder = (ids) =>
  [...ids].sort((one, other) => parseInt(one, 10) - parseInt(other, 10) || String(one).localeCompare(String(other)));

export const routeOf = (run, tray) => {
  const revision = run?.trays?.[tray]?.revision ?? run?.routes?.at(-1)?.number;
  return (run?.routes?.find((one) => one.number === revision) ?? run?.routes?.at(-1))?.steps ?? [];
};

export const stepOf = (run, key, tray) =>
  routeOf(run, tray).find((step) => step.key === key) ??
  run?.routes?.flatMap((route) => route.steps).find((step) => step.key === key);

export const stationName = (state, key) => state.stations?.[key]?.name ?? key ?? "";
export const roomName = (state, key) => state.rooms?.[key] ?? key ?? "";
export const personName = (state, key) => state.people?.[key]?.name ?? say("ui-somebody");

/** 'tray 4', 'trays 4 to 6', 'trays 1, 3 and 5' */
export function trayWords(ids) {
  const sorted = inOrder(ids);
  if (sorted.length === 1) return say("ui-tray", { tray: sorted[0] });
  const numbers = sorted.map(Number);
  const inRow = numbers.every((number, index) => Number.isInteger(number) && number === numbers[0] + index);
  return inRow && sorted.length > 2
    ? say("ui-trays-from-to", { from: sorted[0], to: sorted.at(-1) })
    : say("ui-trays", { trays: list(sorted) });
}

/** What a load is called: 'board 2', 'jig-full 2, tray 4', 'trays 4 to 6'. */
export function loadWords(run, { id = "", load = id, step, pieces = {}, trays }) {
  const ids = trays ?? Object.keys(pieces);
  const size = stepOf(run, step, ids[0])?.size;
  const number = load.split("/")[1] ?? "";
  if (size === "board" && number) return say("ui-board", { board: number });
  if (size === "run" && ids.length > 1) return say("ui-whole-run");
  return ids.length ? trayWords(ids) : "";
}

/** 'Sand 120, tray 4' */
export const loadTitle = (run, load) =>
  [stepOf(run, load.step, Object.keys(load.pieces ?? {})[0])?.name ?? load.step, loadWords(run, load)].filter(Boolean).join(", ");

export const sum = (pieces) => Object.values(pieces ?? {}).reduce((total, count) => total + count, 0);
