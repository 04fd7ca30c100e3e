// What the page asks before some presses, one at a time in place of the step: the start list, the count, a first piece,
// and what is wrong, with hurt and fire before everything else.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { readLength } from "../door/lengths.js";
import { button, fill, own, stepper } from "./parts.js";
import { press, standing, tray } from "./tray.js";

let open = null;
let redraw = () => {};
export const onSheet = (draw) => { redraw = draw; };
export const sheet = () => open?.();

function openSheet(draw) {
  open = draw;
  redraw();
  window.scrollTo(0, 0);
  document.querySelector("#helper h1")?.focus();
}
const closeSheet = () => openSheet(null);

const page = (title, body) => html`<h1 tabindex="-1">${title}</h1>${body}<p>${button(tray().words.back, closeSheet, "quiet full")}</p>`;
const then = (label, drafts) => () => { closeSheet(); press(label, drafts); };

/** Ticks, then about how long it runs, then the press that says that it runs. */
export function openRun(offer) {
  const ticked = new Set();
  let minutes = offer.minutes;
  openSheet(() => {
    const { words } = tray();
    const left = offer.points.length - ticked.size;
    const toggle = (at) => () => { if (!ticked.delete(at)) ticked.add(at); redraw(); };
    const list = offer.points.length ? [{ kind: "checklist ticked", body: { list: "full", items: offer.items } }] : [];
    return page(offer.points.length ? words["list-title"] : offer.words, html`
      ${offer.points.map((point, at) => html`<label class="tick"><input type="checkbox" .checked=${ticked.has(at)} @change=${toggle(at)}>
        ${point.signs.map((number) => html`<img src="/static/signs/${number}.svg" alt="" width="56" height="56">`)}${own(point)}</label>`)}
      ${stepper(words, words.minutes, minutes, { min: 1, max: 2000, unit: words.min, set: (more) => { minutes = more; redraw(); } })}
      <button type="button" class="go" ?disabled=${left > 0} @click=${then(offer.label, [...list, { kind: "machine started", body: { minutes } }])}>
        ${left ? fill(words["list-left"], { left }) : offer.ready}</button>`);
  });
}

/** Pieces that this phone called bad and that the server does not count yet. */
const badHere = () => standing().own.filter((event) => event.kind === "lead called" && event.body.why === "bad piece");

/** 'Done' with those pieces counted as bad, so that the button says it at once. */
export function withBad(offer) {
  const fresh = badHere();
  const counts = offer?.drafts?.[0]?.kind === "load done" && offer.drafts[0].body.counts;
  if (!counts || !fresh.length) return offer;
  const [[key, { good, scrap }]] = Object.entries(counts);
  const more = fresh.slice(0, good).map((own) => ({ pieces: 1, why: own.body.note }));
  const said = { good: good - more.length, scrap: [...scrap, ...more] };
  const bad = said.scrap.reduce((sum, each) => sum + each.pieces, 0);
  return { ...offer, words: fill(tray().words["count-go"], { good: said.good, scrap: bad }), drafts: [{ ...offer.drafts[0], body: { counts: { [key]: said } } }] };
}

/** How many are good, and what is wrong with the others. */
export function openCount(offer) {
  let bad = Math.min(Math.max(1, offer.bad + badHere().length), offer.pieces);
  let why = "";
  openSheet(() => {
    const { words } = tray();
    const good = offer.pieces - bad;
    const scrap = [...offer.before, ...(bad ? [{ pieces: bad, why }] : [])];
    return page(words["count-title"], html`
      ${stepper(words, words.good, good, { max: offer.pieces, set: (more) => { bad = offer.pieces - more; redraw(); } })}
      ${stepper(words, words.scrap, bad, { max: offer.pieces, set: (more) => { bad = more; redraw(); } })}
      ${bad ? chosen(words["count-why"], offer.reasons, why, (key) => { why = key; redraw(); }) : nothing}
      <button type="button" class="go" ?disabled=${bad && !why} @click=${then(offer.label, [{ kind: "load done", body: { counts: { [offer.tray]: { good, scrap } } } }])}>
        ${fill(words["count-go"], { good, scrap: bad })}</button>`);
  });
}

const chosen = (title, reasons, now, set) => html`<h2>${title}</h2><div class="choices">
  ${reasons.map(({ words, why }) => html`<button type="button" aria-pressed=${String(why === now)} @click=${() => set(why)}>${words}</button>`)}</div>`;

/** A first-piece check: right or not, with the measure where there is one. One that is not right calls the lead. */
export function openCheck(check) {
  let typed = "";
  const record = (result) => {
    const mm = readLength(typed, check.units);
    const measures = Number.isFinite(mm) ? { measures: { [check.key]: Number(mm.toFixed(4)) } } : {};
    const failed = [{ kind: "lead called", tray: tray().call.drafts[0].tray, body: { why: "bad piece", note: check.text.slice(0, 200) } }];
    then(tray().words["did-first-piece"], [
      { kind: "first piece checked", body: { result, check: check.key, ...measures } }, ...(result === "fail" ? failed : []),
    ])();
  };
  openSheet(() => {
    const { words } = tray();
    return page(own(check), html`<p class="place">${check.limits}</p>
      ${check.measured ? html`<div class="field"><label for="measured">${words["first-piece-measured"]} (${check.units})</label>
        <input id="measured" class="short" autocomplete="off" inputmode=${check.units === "mm" ? "decimal" : "text"} .value=${typed} @input=${(event) => { typed = event.target.value; }}></div>` : nothing}
      <div class="presses">${button(words["first-piece-pass"], () => record("pass"), "go")}${button(words["first-piece-fail"], () => record("fail"), "full")}</div>`);
  });
}

/** Something is wrong: what an emergency needs stands first, and is one press away. */
export function openWrong() {
  openSheet(() => {
    const { words, wrong } = tray();
    const stop = wrong.stop && wrong.stops.includes(standing().at);
    return page(words["wrong-title"], html`<section class="emergency"><p>${words["wrong-hurt"]}</p><p>${wrong.emergency}</p>
        <div class="presses"><a class="button go danger" href="tel:${wrong.phone.number.replace(/[^+\d]/g, "")}">${wrong.phone.words}</a>
        ${button(wrong.hurt.words, then(wrong.hurt.label, wrong.hurt.drafts), "full")}</div></section>
      <div class="presses">${button(words["wrong-bad"], openBad, "full")}
      ${stop ? button(words["wrong-stopped"], openStop, "full") : nothing}</div>`);
  });
}

function openBad() {
  openSheet(() => {
    const { words, wrong, call } = tray();
    const said = (why) => then(words["did-call"], [{ ...call.drafts[0], body: { why: "bad piece", note: why } }]);
    return page(words["bad-title"], html`<p class="place">${words["bad-count"]}</p><h2>${words["count-why"]}</h2>
      <div class="choices">${wrong.bad.map((reason) => button(reason.words, said(reason.why)))}</div>`);
  });
}

function openStop() {
  openSheet(() => {
    const { words, wrong, call } = tray();
    const said = (why) => then(words["did-stopped"], [
      { kind: "load stopped", body: { why } }, { ...call.drafts[0], body: { why: "stopped" } },
    ]);
    return page(wrong.stop.heading, html`<div class="choices">${wrong.stop.reasons.map((reason) => button(reason.words, said(reason.why)))}</div>`);
  });
}
