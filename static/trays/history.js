// What happened to a tray, as a readable list. It comes from the server when it is opened.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { moment } from "../now/clock.js";
import { redraw } from "../now/sheet.js";
import { shop } from "../now/shop.js";
import { personName, say, sayCode, slug, stepOf } from "../now/words.js";

const read = new Map();

export const history = (run, tray) => entries(run, read.get(`${run.id}/${tray.id}`));

export async function fetchHistory(run, tray) {
  try {
    const answer = await fetch(`/runs/${encodeURIComponent(run)}/trays/${encodeURIComponent(tray)}/history`);
    if (!answer.ok) throw new Error(answer.status);
    read.set(`${run}/${tray}`, (await answer.json()).entries);
  } catch {
    read.set(`${run}/${tray}`, null);
  }
  redraw();
}

function entries(run, found) {
  if (found === undefined) return nothing;
  if (found === null) return html`<p class="notice">${say("trays-history-offline")}</p>`;
  if (!found.length) return html`<p>${say("trays-history-none")}</p>`;
  return html`<ol class="history">${found.map((one) => html`<li><span class="soft">${moment(one.at)}</span><span><span class=${one.undone ? "undone" : ""}>${words(run, one)}</span>
    ${marks(one).map((mark) => html` <span class="soft">(${mark})</span>`)}</span></li>`)}</ol>`;
}

const marks = (one) => [one.undone ? say("trays-history-undone") : "", ["tapped", undefined].includes(one.basis) ? "" : sayCode("basis", one.basis)].filter(Boolean);

/** A code of the history, else who did what at which step. */
function words(run, one) {
  const own = sayCode("history", one.code, one.facts);
  if (own) return own;
  const who = one.person ? personName(shop(), one.person) : "";
  const step = one.facts?.step ?? one.operation ?? "";
  const at = stepOf(run, step)?.name ?? step;
  return [who, sayCode("kind", one.kind) || slug(one.kind), at].filter(Boolean).join(" · ");
}
