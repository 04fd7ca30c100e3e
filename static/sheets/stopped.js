// Stopped early, and what becomes of it: resume, do again, save what is done, scrap.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { about, answer, press } from "../door/press.js";
import { loadTitle, say, sum } from "../door/words.js";
import { oneOf, stopReasons, textField } from "../views/controls.js";
import { ringingFor } from "../views/doing.js";
import { countedOf } from "../views/pieces.js";
import { placesIn, throughStates } from "../views/positions.js";
import { button, closing, goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

export function openStopped(load) {
  const marks = new Map();
  const count = sum(load.pieces);
  let why = "";
  let note = "";
  openSheet((scene) => {
    const title = loadTitle(scene.state.runs[load.run], load);
    const alerts = ringingFor(scene.state, load);
    const record = () => {
      const body = { why, ...Object.fromEntries(["good", "half", "untouched", "spoilt"].map((state) => [state, placesIn(marks, state, count)])), ...(note ? { note } : {}) };
      press(say("did-stopped", { load: title }), [{ kind: "load stopped", ...about(load), body }, ...alerts.map((alert) => answer(alert, "stopped"))]);
    };
    return html`${sheetHead(say("stopped-title", { load: title }))}
      ${oneOf(say("stopped-why"), stopReasons(), why, (key) => { why = key; })}
      ${count <= 60 ? html`<p class="ask">${say("stopped-positions")}</p>${throughStates(count, marks)}` : nothing}
      ${textField(say("ui-note"), note, (text) => { note = text; })}
      ${goButton(say(why ? "stopped-record" : "stopped-say-why"), record, !why)}`;
  });
}

/** What becomes of a load that stopped early. */
export function settleChoices(scene, load) {
  const run = scene.state.runs[load.run];
  const title = loadTitle(run, load);
  const settle = (how, body = {}) => press(say(`did-settled-${how}`, { load: title }), [...spoiltOf(run, load, how), { kind: "stop settled", ...about(load), body: { how, ...body } }]);
  const choice = (how) => button(say(`settle-${how}`), closing(() => settle(how)));
  const good = load.stop?.good?.length ?? 0;
  return html`<p>${say("settle-where", { why: say(`stop-${load.stop?.why ?? "other"}`), good, half: load.stop?.half?.length ?? 0, untouched: load.stop?.untouched?.length ?? sum(load.pieces) - good, spoilt: load.stop?.spoilt?.length ?? 0 })}</p>
    <div class="stack">${choice("resume")}${choice("again")}${button(say("settle-save"), () => openSave(load, settle))}${choice("scrap")}</div>`;
}

// What is spoilt leaves the load before it goes on or is begun again.
function spoiltOf(run, load, how) {
  if (!["resume", "again"].includes(how)) return [];
  return Object.entries(spread(load, "spoilt")).filter(([, pieces]) => pieces).map(([tray, pieces]) => {
    const [good, bad] = countedOf(run, tray, load);
    return { kind: "pieces counted", ...about(load), tray, body: { good, scrap: [{ pieces: pieces + bad, why: "stopped" }] } };
  });
}

function openSave(load, settle) {
  const good = spread(load, "good");
  const spoilt = spread(load, "spoilt");
  const counts = () => Object.fromEntries(Object.entries(good).map(([tray, count]) => [tray, { good: count, ...(spoilt[tray] ? { scrap: [{ pieces: spoilt[tray], why: "stopped" }] } : {}) }]));
  openSheet(() => html`${sheetHead(say("save-title"))}<p>${say("save-words")}</p>
    ${Object.keys(load.pieces).map((tray) => stepper(say("save-tray", { tray }), good[tray], { max: load.pieces[tray] - spoilt[tray], set: (count) => { good[tray] = count; } }))}
    ${goButton(say("save-go", { good: sum(good) }), () => settle("save", { counts: counts() }))}`);
}

// The positions run through the trays of the load in their order.
function spread(load, state) {
  const found = {};
  let from = 0;
  for (const [tray, pieces] of Object.entries(load.pieces)) {
    found[tray] = (load.stop?.[state] ?? []).filter((place) => place > from && place <= from + pieces).length;
    from += pieces;
  }
  return found;
}
