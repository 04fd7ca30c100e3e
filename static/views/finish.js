// A finish: what its label says before it is brought on, and from when a piece may be coated again, handled, and is cured.
// Dry to the touch is not cured, and figures without a label's date are common practice only.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { dayMonth, millis, now, span } from "../door/clock.js";
import { say, stepOf } from "../door/words.js";
import { careText } from "./cautions.js";
import { isCoat } from "./doing.js";

const FROM = ["recoat", "handle", "cure"];
const MINUTE_MS = 60_000;

/** The finish that a step brings on, or null where nobody wrote it down. */
const finishOf = (state, step) => (step?.finish ? state.finishes?.[step.finish] ?? null : null);

/** Before the coat: its name, ventilation, solvent, and whose figures they are. */
export function label(state, step) {
  const finish = finishOf(state, step);
  if (!finish) return html`<p class="label">${say("finish-unknown")}</p>`;
  return html`<p class="label"><b>${finish.name}</b> · ${whose(finish)}
    ${finish.ventilation ? html`<br>${say("finish-ventilation", { ventilation: finish.ventilation })}` : nothing}
    ${finish.solvent ? html`<br>${finish.airing ? say("finish-solvent", { span: span(finish.airing) }) : say("finish-solvent-unknown")}` : nothing}</p>`;
}

/** '14 Mar 2026' of '2026-03-14', as `typed_day` of the server. */
export function dayOfYear(iso) {
  if (!/^\d{4}-\d\d-\d\d$/.test(iso)) return iso;
  const part = Object.fromEntries(new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", day: "numeric", month: "short", year: "numeric" }).formatToParts(Date.parse(iso)).map((field) => [field.type, field.value]));
  return `${dayMonth(part)} ${part.year}`;
}

const whose = (finish) => (finish.sheet_date ? say("finish-label-of", { date: dayOfYear(finish.sheet_date) }) : careText("finish-label"));

/** [[what, moment]] counted from the end of the coat; only what the shop wrote down. */
const times = (finish, step, rest) =>
  FROM.filter((name) => finish?.[name]).map((name) => [name, new Date(doneAt(step, rest) + finish[name] * MINUTE_MS).toISOString()]);

const doneAt = (step, rest) => (step?.wait ? millis(rest.ready_at) - (step.wait.least ?? 0) * MINUTE_MS : millis(rest.began_at));

/** One line: 'Oil: handle from Sun 04:23', or what else is written down of it first; '' where it is no coat. */
export function timesLine(state, step, rest) {
  if (!isCoat(step)) return "";
  const found = times(finishOf(state, step), step, rest);
  const [name, at] = found.find(([name]) => name === "handle") ?? found[0] ?? [];
  return `${step.name}: ${name ? say(`finish-${name}`, { at }) : careText("dry-not-cured")}`;
}

/** All the moments, with whose figures they are and that dry is not cured. */
export function timesOf(state, step, rest) {
  const finish = finishOf(state, step);
  if (!isCoat(step)) return nothing;
  const found = times(finish, step, rest).map(([name, at]) => say(`finish-${name}`, { at }));
  return html`<span class="finish">${[...found, finish ? whose(finish) : say("finish-unknown"), careText("dry-not-cured"), careText("climate"), careText("not-food-safe")].join(" · ")}</span>`;
}

/** The coats of a tray that are not cured yet: [{step, rest}], the newest last. */
export function curing(state, run, tray) {
  return Object.entries(tray.rests ?? {}).map(([key, rest]) => ({ step: stepOf(run, key, tray.id), rest }))
    .filter(({ step, rest }) => times(finishOf(state, step), step, rest).some(([, at]) => millis(at) > now()));
}
