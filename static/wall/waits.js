// What dries, cures or stands in clamps, by the moment it is over; the nearest first, and no more than fit.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, moment, now } from "../door/clock.js";
import { resting } from "../views/doing.js";
import { inOrder, list, say } from "../door/words.js";

const MOST = 4;

export function waits(state) {
  const rows = grouped(resting(state).filter(({ rest }) => millis(rest.latest_at ?? rest.ready_at) > now()));
  if (!rows.length) return nothing;
  return html`<section><h2 class="head">${say("wall-waits")}</h2><ul>${rows.slice(0, MOST).map(row)}</ul>
    ${rows.length > MOST ? html`<p class="more">${say("wall-more", { count: rows.length - MOST })}</p>` : nothing}</section>`;
}

// Trays that came through the same step together are one line.
function grouped(all) {
  const rows = new Map();
  for (const one of all) {
    const key = [one.run.id, one.step?.key, moment(one.rest.ready_at)].join("|");
    if (rows.has(key)) rows.get(key).trays.push(one.tray.id);
    else rows.set(key, { ...one, trays: [one.tray.id] });
  }
  return [...rows.values()];
}

function row({ rest, step, trays }) {
  const ready = millis(rest.ready_at) <= now();
  const late = rest.latest_at && minutesTo(rest.latest_at) < 15;
  const when = rest.latest_at && ready ? say("wait-by", { by: rest.latest_at }) : say("wait-from", { from: rest.ready_at });
  const words = say(`wait-${rest.why}`, { trays: list(inOrder(trays)), count: trays.length, step: step?.name ?? "" });
  return html`<li class=${late ? "late" : ""}><span>${words}</span><time>${when}</time></li>`;
}
