// What happened to a tray, from the server's log. It is asked for when somebody opens it, and not kept.

import { redraw } from "./screen.js";

const read = new Map();

/** The entries of a tray's history; {refused} with the server's status; null without the server; undefined until then. */
export const historyOf = (run, tray) => read.get(`${run}/${tray}`);

export async function fetchHistory(run, tray) {
  try {
    const answer = await fetch(`/runs/${encodeURIComponent(run)}/trays/${encodeURIComponent(tray)}/history`);
    read.set(`${run}/${tray}`, answer.ok ? (await answer.json()).entries : { refused: answer.status });
  } catch {
    read.set(`${run}/${tray}`, null);
  }
  redraw();
}
