// Out of something, and holding: the pieces wait for it, the rest goes on.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { about, press } from "../door/press.js";
import { inOrder, routeOf, say, sum } from "../door/words.js";
import { oneOf, textField, untilWhen } from "../views/controls.js";
import { goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

/** The operation waits for a supply; the load at hand goes off its station and its pieces are held. */
export function openOutOf({ load, step }) {
  let supply = "";
  let until = "";
  openSheet((scene) => {
    const record = () => {
      const why = say("out-why", { supply });
      const wait = until ? { until } : {};
      press(say("did-out", { supply }), [
        { kind: "supply out", ...about(load), body: { supply, ...wait } },
        ...offAndHeld(scene.state.runs[load.run], load, { why, waiting_for: supply, ...wait }),
      ]);
    };
    return html`${sheetHead(say("out-title", { step: step.name }))}
      ${step.uses?.length ? oneOf(say("out-of-these"), step.uses.map((use) => [use.supply, use.supply]), supply, (key) => { supply = key; }) : nothing}
      ${textField(say("out-what"), supply, (text) => { supply = text; })}
      ${untilWhen(say("out-until"), until, (iso) => { until = iso; })}
      ${goButton(say("out-go", { supply: supply || "…" }), record, !supply.trim())}`;
  });
}

/** Takes the load off and holds what was left of it. */
function offAndHeld(run, load, body) {
  const rest = Object.keys(load.pieces).map((tray) => [tray, run.trays[tray]?.busy?.[load.step] ?? 0]).filter(([, pieces]) => pieces);
  const off = { kind: "load taken off", ...about(load) };
  return [off, ...rest.map(([tray, pieces]) => ({ kind: "pieces held", ...about(load), load: "", tray, body: { ...body, pieces } }))];
}

/** Holds pieces of a tray at the step where they are. `from` is the load at hand, if there is one. */
export function openHold(scene, { runId, tray, from } = {}) {
  const trays = from ? inOrder(Object.keys(from.pieces)) : tray ? [tray] : inOrder(Object.keys(scene.state.runs[runId].trays)).filter((id) => sum(scene.state.runs[runId].trays[id].at));
  const it = { tray: trays[0], pieces: null, why: "", until: "" };
  openSheet(({ state }) => {
    const run = state.runs[from?.run ?? runId];
    const tray = run.trays[it.tray];
    const step = from ? routeOf(run, it.tray).find((each) => each.key === from.step) : routeOf(run, it.tray).find((each) => tray?.at?.[each.key]);
    if (!step) return html`${sheetHead(say("hold-title"))}<p>${say("hold-nothing")}</p>`;
    const max = from ? tray.busy?.[step.key] ?? 0 : (tray.at?.[step.key] ?? 0) - (tray.busy?.[step.key] ?? 0);
    const pieces = Math.min(it.pieces ?? max, max);
    const record = () => {
      const body = { why: it.why, pieces, ...(it.until ? { until: it.until } : {}) };
      const whole = from && { kind: "load taken off", ...about(from) };
      const held = { kind: "pieces held", run: from?.run ?? runId, tray: it.tray, operation: step.key, body };
      press(say("did-held", { pieces, tray: it.tray }), [...(whole ? [whole] : []), held]);
    };
    return html`${sheetHead(say("hold-title"))}
      ${trays.length > 1 ? oneOf(say("bad-which"), trays.map((id) => [id, say("ui-tray", { tray: id })]), it.tray, (id) => { it.tray = id; it.pieces = null; }) : nothing}
      <p>${say("hold-at", { step: step.name })}</p>
      ${stepper(say("hold-how-many"), pieces, { min: 1, max, set: (count) => { it.pieces = count; } })}
      ${textField(say("hold-why"), it.why, (text) => { it.why = text; })}
      ${untilWhen(say("hold-until"), it.until, (iso) => { it.until = iso; })}
      ${goButton(say("hold-go", { pieces }), record, !it.why.trim() || max < 1)}`;
  });
}
