// What dries, cures or stands in clamps, by time of day.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, minutesTo, moment, now } from "./clock.js";
import { resting } from "./doing.js";
import { inOrder, routeOf } from "./names.js";
import { list, say } from "./words.js";

export function waits({ state }) {
  const rows = group(resting(state).filter(stillMatters));
  if (!rows.length) return nothing;
  return html`<section><h2>${say("ui-waits")}</h2><ul class="rows">${rows.map(row)}</ul></section>`;
}

const after = ({ run, tray, step }) => {
  const steps = routeOf(run, tray.id);
  return steps[steps.findIndex((one) => one.key === step?.key) + 1];
};

// A wait that is over matters only while its pieces have a latest end before them.
function stillMatters(one) {
  if (millis(one.rest.ready_at) > now()) return true;
  const next = after(one);
  return Boolean(next && (one.tray.at?.[next.key] ?? 0) > (one.tray.busy?.[next.key] ?? 0));
}

// Trays that came through the same step together are one line.
function group(all) {
  const rows = new Map();
  for (const one of all) {
    const key = [one.run.id ?? one.run.name, one.step?.key, moment(one.rest.ready_at), moment(one.rest.latest_at ?? NaN)].join("|");
    if (rows.has(key)) rows.get(key).trays.push(one.tray.id);
    else rows.set(key, { ...one, trays: [one.tray.id] });
  }
  return [...rows.values()];
}

function row(one) {
  const { rest, step, trays } = one;
  const next = after(one)?.name ?? "";
  const ready = millis(rest.ready_at) <= now();
  const words = say(`wait-${rest.why}`, { trays: list(inOrder(trays)), count: trays.length, step: step?.name ?? "" });
  const late = rest.latest_at && minutesTo(rest.latest_at) < 15;
  return html`<li class="row ${late ? "late" : ""}"><span>${words}${next ? html`<br><span class="soft">${say("wait-then", { next })}</span>` : nothing}</span>
    <b>${rest.latest_at ? say(ready ? "wait-by" : "wait-between", { from: rest.ready_at, by: rest.latest_at }) : say("wait-from", { from: rest.ready_at })}</b></li>`;
}
