// 'Something is wrong': one sheet with everything that can go wrong, about the load at hand; what an emergency needs first.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { emergency } from "../alerts/answers.js";
import { about, isoIn, press } from "../door/press.js";
import { inOrder, loadTitle, say } from "../door/words.js";
import { declineReasons, oneOf, textField, untilWhen } from "../views/controls.js";
import { handsOf, isLead, loadScene, openLoads } from "../views/doing.js";
import { button, closing, goButton, openSheet, sheetHead } from "../views/sheet.js";
import { openBadPiece } from "./bad_piece.js";
import { openFirstPiece } from "./first_piece.js";
import { openHold, openOutOf } from "./out_of.js";
import { openStopped } from "./stopped.js";

const FAULTS = [
  ["bad", (scene, here) => openBadPiece(here)],
  ["stopped", (scene, here) => openStopped(here.load)],
  ["first", (scene, here) => openFirstPiece(here)],
];
// What is no fault.
const CHANGES = [
  ["out", (scene, here) => openOutOf(here)],
  ["hold", (scene, here) => openHold(scene, { from: here.load })],
];
const FITS = {
  bad: ["working", "unloading", "ended", "stopped", "loading"],
  stopped: ["loading", "working", "running", "ended", "unloading"],
  out: ["loading", "working", "unloading"],
  hold: ["loading", "working", "unloading", "ended"],
  first: ["loading", "working", "running", "ended", "unloading", "stopped"],
};

export function openWrong(scene) {
  const choices = (list) => list.map(([key, open]) => button(say(`wrong-${key}`), () => withLoad(scene, key, open)));
  openSheet(() => html`${sheetHead(say("wrong-title"))}${ifHurt(scene)}<div class="stack">
    ${choices(FAULTS)}${button(say("wrong-station"), () => openOutOfUse(scene))}${called(scene, "help")}</div>
    <h3>${say("wrong-changes")}</h3><div class="stack">${choices(CHANGES)}${button(say("wrong-changed"), () => openChanged(scene))}</div>`);
}

const ifHurt = (scene) => html`<section class="emergency" aria-label=${say("wrong-hurt-title")}>${emergency(scene.state, called(scene, "hurt"))}</section>`;

/** Who is no lead calls one to the tray at hand. */
function called({ state, me }, why, kind) {
  const at = handsOf(state, me)?.load;
  const tray = at && inOrder(Object.keys(at.pieces ?? {}))[0];
  if (isLead(state, me) || !tray) return nothing;
  const call = closing(() => press(say("did-call", { tray, why: say(`call-why-${why}`) }), [{ kind: "lead called", ...about(at), load: "", tray, body: { why } }]));
  return button(say(why === "hurt" ? "wrong-hurt" : "wrong-call"), call, kind);
}

// What my hands are at comes first; a stop may be any machine's.
function withLoad(scene, key, open) {
  const fits = openLoads(scene.state).filter((load) => FITS[key].includes(load.state));
  const mine = handsOf(scene.state, scene.me);
  if (mine?.load && FITS[key].includes(mine.load.state) && (key !== "stopped" || fits.length === 1)) return open(scene, mine);
  if (fits.length === 1) return open(scene, loadScene(scene.state, fits[0]));
  openSheet(({ state }) => html`${sheetHead(say("wrong-which"))}
    ${fits.length ? html`<div class="stack">${fits.map((load) => button(loadTitle(state.runs[load.run], load), () => open(scene, loadScene(state, load))))}</div>` : html`<p>${say("wrong-no-load")}</p><a class="button" href="/trays">${say("ui-trays-title")}</a>`}`);
}

const stations = (scene) => Object.entries(scene.state.stations ?? {}).map(([key, station]) => [key, station.name]);

const atHand = (scene) => handsOf(scene.state, scene.me)?.load?.station ?? "";

/** A new cutter, wood, jig or focus: the full list and the first piece come again. */
function openChanged(scene) {
  let station = atHand(scene);
  let what = "cutter";
  const record = () => press(say("did-changed", { what: say(`changed-${what}`) }), [{ kind: "setup changed", station, body: { what } }]);
  openSheet(() => html`${sheetHead(say("wrong-changed"))}
    ${oneOf(say("ui-where"), stations(scene), station, (key) => { station = key; })}
    ${oneOf(say("ui-what"), ["cutter", "wood", "jig", "focus", "other"].map((key) => [key, say(`changed-${key}`)]), what, (key) => { what = key; })}
    ${goButton(say("changed-go"), record, !station)}`);
}

function openOutOfUse(scene) {
  const it = { station: atHand(scene), why: "", until: "" };
  const record = () => press(say("did-out-of-use", { station: scene.state.stations[it.station].name }),
    [{ kind: "station out of use", station: it.station, body: { why: it.why, ...(it.until ? { until: it.until } : {}) } }]);
  openSheet(() => html`${sheetHead(say("wrong-station"))}
    ${oneOf(say("ui-where"), stations(scene), it.station, (key) => { it.station = key; })}
    ${textField(say("ui-why"), it.why, (text) => { it.why = text; })}
    ${untilWhen(say("hold-until"), it.until, (iso) => { it.until = iso; })}
    ${goButton(say("out-of-use-go"), record, !it.station)}`);
}

/** 'Skip this …': answers the proposed move, and is remembered for an hour. */
export function openNotThis(move, title) {
  let other = "";
  const decline = (because) => closing(() => press(say("did-not-this", { what: title }), [{ kind: "move declined", run: move.run ?? "", body: { move: move.id, because, until: isoIn(60) } }]));
  openSheet(() => html`${sheetHead(say("not-this-title", { what: title }))}<div class="stack">
    ${declineReasons().map(([, words]) => button(words, decline(words)))}</div>
    ${textField(say("not-this-other"), other, (text) => { other = text; })}
    <button type="button" class="full" ?disabled=${!other.trim()} @click=${decline(other)}>${say("ui-ok")}</button>`);
}
