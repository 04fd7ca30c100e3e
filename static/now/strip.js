// The strip of a tray: one box a step. The same row stands on its traveller.

import { html } from "../vendor/lit-html-3.3.3.js";
import { millis, now } from "./clock.js";
import { routeOf } from "./names.js";
import { say } from "./words.js";

/** [{step, box}] with box one of done, started, wait, held or '' for not yet. */
export function boxes(run, tray) {
  const steps = routeOf(run, tray.id);
  let before = 0; // pieces at this step or an earlier one
  return steps.map((step) => {
    const here = tray.at?.[step.key] ?? 0;
    const passed = Object.values(tray.counts?.[step.key] ?? {}).reduce((total, [good]) => total + good, 0);
    before += here;
    const rest = tray.rests?.[step.key];
    if (rest && !rest.ended_at && millis(rest.ready_at) > now()) return { step, box: "wait" };
    if (tray.holds?.some((hold) => hold.step === step.key)) return { step, box: "held" };
    if (tray.busy?.[step.key] || (here && passed)) return { step, box: "started" };
    return { step, box: before === 0 && (passed || leftAfter(tray, steps, step)) ? "done" : "" };
  });
}

// A rework tray, or one begun half-way, has no counts at the steps before it.
const leftAfter = (tray, steps, step) =>
  (tray.good ?? 0) > 0 || steps.slice(steps.indexOf(step) + 1).some((later) => tray.at?.[later.key]);

export function strip(run, tray) {
  const all = boxes(run, tray);
  const done = all.filter(({ box }) => box === "done").length;
  return html`<span class="strip" role="img" aria-label=${say("strip-label", { done, steps: all.length })}>
    ${all.map(({ step, box }) => html`<i class=${box} title=${step.name}></i>`)}</span>`;
}
