// This phone's own presses laid over a state: the page's fold with the transition table that the server reads too. Fetched
// only while presses are on their way.

import { overlay } from "../table/fold.js";
import { keep, kept } from "./outbox.js";

/** What gives a state with events laid over it. */
export async function openOverlay() {
  const table = await readTable();
  return (state, events) => overlay(state, events, table);
}

async function readTable() {
  try {
    const answer = await fetch("/table.json");
    if (!answer.ok) throw new Error("no table");
    const table = await answer.json();
    void keep("table", table);
    return table;
  } catch (error) {
    const table = await kept("table");
    if (!table) throw error;
    return table;
  }
}
