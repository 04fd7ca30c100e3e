// Alerts by name, and the answers that stop them everywhere.

import { put } from "./record.js";

/** An alert's name: its kind, what it is about, which occurrence. */
export const alertId = (kind, ...subject) => [kind, ...subject].join("|");

/** Keeps who answered what, and when to ask again. */
export function noteAnswer(draft, alert, answer, event, again) {
  const kept = { answer, person: event.person, at: event.moment, ...(again ? { ask_again_at: again } : {}) };
  draft.changes.answers = put(draft.of("answers"), alert, kept);
}
