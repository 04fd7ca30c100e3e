// The first-piece check: pass or fail, with measures in the shop's unit.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { readLength, showLength } from "../door/lengths.js";
import { about, press } from "../door/press.js";
import { say } from "../door/words.js";
import { textField } from "../views/controls.js";
import { button, closing, openSheet, sheetHead } from "../views/sheet.js";

export function openFirstPiece(here) {
  const { step } = here;
  const typed = {};
  let note = "";
  openSheet(({ state }) => {
    const units = state.shop?.units ?? "mm";
    const record = (result) => closing(() => press(say(`did-first-piece-${result}`, { step: step.name }), checked(here, result, read(step.checks, typed, units), note)));
    return html`${sheetHead(say("first-piece-title", { step: step.name }))}
      ${(step.checks ?? []).map((check) => field(check, typed, units))}
      ${textField(say("ui-note"), note, (text) => { note = text; })}
      <div class="pair">${button(say("first-piece-fails"), record("fail"), "danger")}${button(say("first-piece-passes"), record("pass"), "go-small")}</div>`;
  });
}

// One event a check; where one fails, it is the one out of its limits, or the first.
function checked({ load, step }, result, measures, note) {
  const checks = step.checks?.length ? step.checks : [{}];
  const bad = checks.find((check) => Number.isFinite(measures[check.key]) && !fits(check, measures[check.key])) ?? checks[0];
  return (result === "fail" ? [bad] : checks).map(({ key }) => ({
    kind: "first piece checked", ...about(load),
    body: { result, ...(key ? { check: key } : {}), ...(key in measures ? { measures: { [key]: measures[key] } } : {}), ...(note ? { note } : {}) },
  }));
}

function field(check, typed, units) {
  if (check.nominal === undefined || check.nominal === null) return html`<p class="check">${check.text}</p>`;
  const mm = readLength(typed[check.key] ?? "", units);
  const out = Number.isFinite(mm) && !fits(check, mm);
  return html`${textField(`${check.text} (${limits(check, units)})`, typed[check.key] ?? "", (text) => { typed[check.key] = text; }, units === "mm" ? "decimal" : "text")}
    ${out ? html`<p class="error" role="status">${say("first-piece-outside", { measured: showLength(mm, units) })}</p>` : nothing}`;
}

const fits = ({ nominal, plus, minus }, mm) => mm <= nominal + (plus ?? Infinity) + 1e-9 && mm >= nominal - (minus ?? Infinity) - 1e-9;

function limits({ nominal, plus, minus }, units) {
  const shown = showLength(nominal, units);
  return plus || minus ? say("first-piece-limits", { nominal: shown, plus: showLength(plus ?? 0, units), minus: showLength(minus ?? 0, units) }) : shown;
}

function read(checks = [], typed, units) {
  const measures = {};
  for (const check of checks) {
    const mm = readLength(typed[check.key] ?? "", units);
    if (Number.isFinite(mm)) measures[check.key] = Number(mm.toFixed(4));
    else if (typed[check.key]) measures[check.key] = typed[check.key];
  }
  return measures;
}
