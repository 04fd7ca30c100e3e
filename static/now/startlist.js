// The start list: full once a session and after a change; one press a load after that.

import { html } from "../vendor/lit-html-3.3.3.js";
import { redraw } from "./drawing.js";
import { about } from "./presses.js";
import { press } from "./press.js";
import { closeSheet, openSheet, sheetHead } from "./sheet.js";
import { cautions } from "./details.js";
import { say } from "./words.js";

/** Opens the full list. `then(drafts)` is called with the event that notes it; without it the list is noted alone. */
export function openStartList(here, then = (drafts) => press(say("did-list", { station: here.station?.name ?? "" }), drafts)) {
  const ticked = new Set();
  const points = here.step.checklist;
  const done = () => {
    closeSheet();
    then([{ kind: "checklist ticked", ...about(here.load), body: { list: "full", items: points } }]);
  };
  openSheet(() => html`${sheetHead(say("list-title", { step: here.step.name }))}${cautions(here.step)}
    ${points.map((point, index) => tick(point, ticked.has(index), () => { toggle(ticked, index); redraw(); }))}
    <button type="button" class="go" ?disabled=${ticked.size < points.length} @click=${done}>
      ${ticked.size < points.length ? say("list-left", { left: points.length - ticked.size }) : say("list-done", { station: here.station?.name ?? "" })}</button>`);
}

export const toggle = (set, value) => (set.has(value) ? set.delete(value) : set.add(value));

export const tick = (words, on, change) =>
  html`<label class="tick"><input type="checkbox" .checked=${on} @change=${change}><span>${words}</span></label>`;
