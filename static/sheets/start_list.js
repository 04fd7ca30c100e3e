// The start list in full: the catalogue's points for the station, then the operation's own. The material is shown with what
// the shop forbids, and what nobody knows cannot be ticked: unknown means no.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { noteListed, press } from "../door/press.js";
import { list, say, trayWords } from "../door/words.js";
import { careText, pointText } from "../views/cautions.js";
import { textField, tick, toggle } from "../views/controls.js";
import { listOf, loadAt, loadScene, materials, toLookAt, unknownTrays } from "../views/doing.js";
import { listed } from "../views/operation.js";
import { goButton, openSheet, sheetHead } from "../views/sheet.js";

/** Opens it. `then(drafts, materials)` is called with the event that notes it and the materials that were looked at; without it the list is noted alone. */
export function openStartList(from, then, ready = "list-done") {
  const ticked = new Set();
  const it = { wood: "" };
  openSheet((scene) => {
    const here = loadScene(scene.state, loadAt(scene.state, [from.load.run, from.load.id]) ?? from.load);
    const points = listOf(here);
    const left = points.filter((point, index) => !ticked.has(index) || isBarred(here, point)).length;
    const name = { station: here.station?.name ?? "" };
    const done = () => {
      noteListed(here.load);
      const drafts = [listed(here, "full", points.map(pointText))];
      if (then) then(drafts, toLookAt(here));
      else press(say("did-list", name), drafts);
    };
    return html`${sheetHead(say("list-title", { step: here.step.name }))}
      ${points.map((point, index) => row(scene, here, it, point, ticked.has(index), () => toggle(ticked, index)))}
      ${goButton(left ? say("list-left", { left }) : say(ready, name), done, left > 0)}`;
  });
}

/** Whether a material is on the shop's list, as the server judged it. */
const isForbidden = (run, material) => run.judged?.[material]?.says === "forbidden";

const isBarred = (here, { key }) =>
  key === "start-material" && (unknownTrays(here).length > 0 || materials(here).some((material) => isForbidden(here.run, material)));

function row(scene, here, it, point, on, change) {
  const barred = isBarred(here, point);
  return html`${tick(html`${pointText(point)}${beside(scene, here, point)}`, on && !barred, change, barred)}
    ${point.key === "start-material" && unknownTrays(here).length ? noteIt(here, it) : nothing}`;
}

/** What the shop knows of this point: the eyewear of the station, the material and what is never let in. */
function beside({ state }, here, { key }) {
  if (key === "start-eyewear") return html`<b class="beside-point">${here.station?.eyewear || say("list-eyewear-unknown")}</b>`;
  if (key === "start-extinguisher") return html`<span class="beside-point">${careText("which-extinguisher")}</span>`;
  if (key !== "start-material") return nothing;
  const known = materials(here);
  const bad = known.filter((material) => isForbidden(here.run, material));
  const look = toLookAt(here);
  return html`<b class="beside-point">${known.length ? list(known) : say("list-material-unknown")}</b>
    ${bad.length ? html`<b class="error">${say("list-material-forbidden", { material: bad })}</b>` : nothing}
    ${look.length ? html`<b class="beside-point">${say("list-material-look", { material: look })}</b>` : nothing}
    <span class="beside-point">${state.forbidden?.length ? say("list-never", { forbidden: state.forbidden }) : say("list-never-empty")}</span>`;
}

function noteIt(here, it) {
  const trays = unknownTrays(here);
  const note = () => {
    press(say("did-wood", { tray: trays.join(", "), wood: it.wood }), trays.map((tray) => ({ kind: "wood noted", run: here.load.run, tray, body: { wood: it.wood.trim() } })));
    it.wood = "";
  };
  return html`<div class="asked">${textField(say("list-material-which", { trays: trayWords(trays) }), it.wood, (text) => { it.wood = text; })}
    <button type="button" class="full" ?disabled=${!it.wood.trim()} @click=${note}>${say("list-material-note")}</button></div>`;
}
