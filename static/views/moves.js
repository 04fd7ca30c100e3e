// Moves: what the server says could be done, in its order. Which of them are still open here, and their words.

import { millis, now } from "../door/clock.js";
import { jobOf, loadOf } from "../door/press.js";
import { loadTitle, loadWords, roomName, say, sayCode, slug, stationName, stepOf } from "../door/words.js";
import { loadAt } from "./doing.js";

const FITS = {
  "go on": ["loading", "working", "unloading"], run: ["loading", "stopped"], unload: ["running", "ended"], finish: ["working", "unloading"], settle: ["stopped"],
};

/** Moves that are still open: a load that has since been begun or ended here is no move any more. */
export function openMoves(state, person) {
  const hands = state.people?.[person]?.hands?.join("\n");
  return (state.moves ?? []).filter((move) => {
    const load = loadAt(state, [move.run, move.load]);
    if (["start", "wipe"].includes(move.code)) return !load;
    if (FITS[move.code]) return load && `${load.run}\n${load.id}` !== hands && FITS[move.code].includes(load.state);
    return move.code !== "take over" || (load?.state === "running" && load.watcher !== person);
  });
}

/** The move that follows what I am at: the first one that begins something. */
export const nextMove = (moves) => moves.find((move) => ["start", "wipe", "go on", "unload"].includes(move.code));

/** 'Sand 120, tray 4' for a move. */
export function titleOf(state, move) {
  if (move.code === "job") return state.jobs?.[jobOf(move)]?.name ?? "";
  const run = state.runs?.[move.run];
  if (!run || !move.load || move.code === "take over") return moveWords(state, move);
  return loadTitle(run, loadOf(move));
}

/** The sentence of a move. */
export function moveWords(state, move) {
  const run = state.runs?.[move.run];
  const facts = {
    at: "", ...move.facts,
    step: stepOf(run, move.step, move.trays?.[0])?.name ?? "", what: run && move.load ? loadWords(run, move) : "",
    station: move.station ? stationName(state, move.station) : move.facts?.station ?? "", room: roomName(state, move.room), minutes: Math.round(move.minutes ?? 0),
    job: move.code === "job" ? state.jobs?.[jobOf(move)]?.name ?? "" : "", run: run?.name ?? "",
  };
  const id = `move-${slug(move.code)}`;
  if (move.code === "take over" && millis(facts.at) > now()) return say(`${id}-at`, facts);
  return say(move.code === "free" && facts.at ? `${id}-until` : id, facts);
}

/** Why it comes first, where the server says so. */
export const reason = (move) => sayCode("because", move.because?.code, move.because?.facts);
