// 'Called away': one large press, no reason asked; a watched machine is paused and made safe first.

import { html } from "../vendor/lit-html-3.3.3.js";
import { handsOf, inSession, watchedBy } from "../views/doing.js";
import { about, handOver, LEFT, press, startDraft } from "../door/press.js";
import { remember } from "../door/remembered.js";
import { closeSheet, openSheet, sheetHead, stepper } from "../views/sheet.js";
import { list, loadWords, say, stationName, stepOf, sum } from "../door/words.js";

export function calledAway(scene) {
  const running = watchedBy(scene.state, scene.me);
  const go = (paused = []) => {
    closeSheet();
    const hands = handsOf(scene.state, scene.me);
    remember(LEFT, JSON.stringify(hands?.load ? [hands.load.run, hands.load.id] : null));
    const stops = paused.map((load) => ({ kind: "load stopped", ...about(load), body: { why: "other", note: say("away-paused") } }));
    press(say("did-away"), [...stops, { kind: "person called away" }]);
  };
  if (!running.length) return go();
  openSheet(() => html`${sheetHead(say("away-title"))}
    <p class="cautions">${say("away-make-safe", { stations: list(running.map((load) => stationName(scene.state, load.station))) })}</p>
    <button type="button" class="go" @click=${() => go(running)}>${say("away-is-safe")}</button>
    ${watchers(scene, running, () => go())}`);
}

/** A button for each other person who is here: they watch these machines from now on. */
export const watchers = (scene, running, then = () => {}) =>
  others(scene).map(([key, person]) => html`<button type="button" class="full spaced" @click=${() => { handOver(running, key, person); then(); }}>${say("away-other-watches", { person: person.name })}</button>`);

const others = ({ state, me }) => Object.entries(state.people ?? {}).filter(([key, person]) => key !== me && inSession(state, key) && !person.away);

// 'How many of the five are sanded?' The rest goes on with the same press.
export function openHowMany(scene, load) {
  const run = scene.state.runs[load.run];
  const done = Object.fromEntries(Object.keys(load.pieces).map((tray) => [tray, run.trays[tray]?.counts?.[load.step]?.[load.id]?.[0] ?? 0]));
  const go = () => {
    closeSheet();
    const counted = Object.keys(done).filter((tray) => done[tray]).map((tray) => ({ kind: "pieces counted", ...about(load), tray, body: { good: done[tray], scrap: scrapOf(run, load, tray) } }));
    press(say("did-back"), [{ kind: "person came back" }, ...counted, startDraft(load)]);
  };
  openSheet(() => html`${sheetHead(say("away-how-many", { pieces: sum(load.pieces), step: stepOf(run, load.step)?.name ?? "" }))}
    ${Object.keys(done).map((tray) => stepper(loadWords(run, { ...load, id: "", trays: [tray] }), done[tray], { max: load.pieces[tray], set: (count) => { done[tray] = count; } }))}
    <button type="button" class="go" @click=${go}>${say("away-go-on")}</button>`);
}

const scrapOf = (run, load, tray) => (run.trays[tray]?.scrap?.[load.step] ?? []).filter((one) => one.load === load.id).map(({ load: _, ...one }) => one);
