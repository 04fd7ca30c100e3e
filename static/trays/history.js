// What happened to a tray, as a readable list. It comes from the server when it is opened.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { moment } from "../door/clock.js";
import { redraw } from "../views/sheet.js";
import { shop } from "../door/shop.js";
import { personName, say, sayCode, slug, stepOf } from "../door/words.js";

const read = new Map();

export const history = (run, tray) => entries(run, read.get(`${run.id}/${tray.id}`));

export async function fetchHistory(run, tray) {
  try {
    const answer = await fetch(`/runs/${encodeURIComponent(run)}/trays/${encodeURIComponent(tray)}/history`);
    read.set(`${run}/${tray}`, answer.ok ? (await answer.json()).entries : { refused: answer.status });
  } catch {
    read.set(`${run}/${tray}`, null);
  }
  redraw();
}

function entries(run, found) {
  if (found === undefined) return nothing;
  if (found === null) return html`<p class="notice">${say("trays-history-offline")}</p>`;
  if (found.refused) return html`<p class="notice">${say("trays-history-refused", { code: found.refused })}</p>`;
  if (!found.length) return html`<p>${say("trays-history-none")}</p>`;
  return html`<ol class="history">${found.map((one) => html`<li><span class="soft">${moment(one.at)}</span><span><span class=${one.undone ? "undone" : ""}>${words(run, one)}</span>
    ${marks(one).map((mark) => html` <span class="soft">(${mark})</span>`)}</span></li>`)}</ol>`;
}

const marks = (one) => [one.undone ? say("trays-history-undone") : "", ["tapped", undefined].includes(one.basis) ? "" : sayCode("basis", one.basis)].filter(Boolean);

/** Who did what at which step, and what was counted, moved or noted with it. */
function words(run, one) {
  const facts = one.facts ?? {};
  const who = facts.who ?? (one.person ? personName(shop(), one.person) : "");
  const step = stepOf(run, facts.step)?.name ?? facts.step;
  const did = [who, sayCode("kind", one.kind) || slug(one.kind)].filter(Boolean).join(" ");
  return [[did, step].filter(Boolean).join(": "), ...noted(facts)].join(", ");
}

function noted(facts) {
  const found = [];
  if (facts.good !== undefined) found.push(say("count-good", { good: facts.good }));
  else if (facts.pieces) found.push(say("count-pieces", { pieces: facts.pieces }));
  if (facts.scrap) found.push(say("count-scrap", { scrap: facts.scrap }));
  if (facts.to) found.push(say("history-to", { from: facts.from, to: facts.to, step: facts.to_step ?? "" }));
  if (facts.result) found.push(say(`history-${facts.result}`));
  for (const name of ["supply", "why", "waiting_for", "wood", "board", "note"]) if (facts[name]) found.push(facts[name]);
  if (facts.until) found.push(say("session-until", { until: facts.until }));
  if (facts.to_settle) found.push(say("settle-title").toLowerCase());
  return found;
}
