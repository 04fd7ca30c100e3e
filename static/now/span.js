// The question about a long span: asked once, after the count, beside whatever comes next. It blocks nothing, and goes
// away with its answer or at the next count.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { millis, now, span as spanWords } from "../door/clock.js";
import { isUndone, onCount, press } from "../door/press.js";
import { redraw } from "../door/screen.js";
import { me, shop } from "../door/shop.js";
import { loadTitle, say, sum } from "../door/words.js";
import { loadScene } from "../views/doing.js";
import { button, goButton, openSheet, sheetHead, stepper } from "../views/sheet.js";

// Under this, twice the estimate is a matter of minutes: not worth a question.
const LEAST_MINUTES = 10;
let open = null;

// Who says when it was done has said how long it took.
onCount((load, isLate) => {
  const found = isLate ? null : longSpan(shop(), me(), load);
  return (press) => { open = found && { ...found, press }; redraw(); };
});

/** My span on this load, if it is over twice its estimate; null where it is not, or where it began is not known. */
function longSpan(state, person, load) {
  const began = state?.runs?.[load.run]?.loads?.[load.id]?.began?.[person];
  const since = state?.people?.[person]?.hands_since;
  if (!began || !since) return null;
  const here = loadScene(state, load);
  const estimate = estimated(here);
  const minutes = (now() - millis(since)) / 60_000;
  if (!estimate || minutes < LEAST_MINUTES || minutes <= 2 * estimate) return null;
  return { span: began, person, load, minutes, estimate, title: loadTitle(here.run, load) };
}

function estimated({ load, step }) {
  const { setup = 0, loading = 0, unloading = 0, hand = 0 } = step?.minutes ?? {};
  if (load.state === "unloading") return unloading;
  return (load.fresh ? setup : 0) + loading + unloading + hand * sum(load.pieces);
}

/** 'Sand 120, tray 3 took 1 h 40. Were you working the whole time?' */
export function longSpanRow({ me: person }) {
  if (!open || open.person !== person || isUndone(open.press)) return nothing;
  const { title, minutes } = open;
  return html`<section class="asked"><p>${say("span-ask", { load: title, span: spanWords(minutes) })}</p>
    <div class="choices even">${button(say("span-all"), () => reply({ answer: "all" }))}${button(say("span-about"), openAbout)}
    ${button(say("ui-unknown"), () => reply({ answer: "unknown" }))}</div></section>`;
}

function reply(body) {
  const { load, span, title } = open;
  open = null;
  press(say("did-span", { load: title }), [{ kind: "span answered", run: load.run, load: load.id, operation: load.step, station: load.station, body: { span, ...body } }]);
}

function openAbout() {
  let minutes = Math.max(1, Math.round(open.estimate));
  const most = Math.ceil(open.minutes);
  const { title } = open;
  openSheet(() => html`${sheetHead(say("span-about-title", { load: title }))}
    ${stepper(say("span-about-minutes"), minutes, { min: 1, max: most, by: 5, unit: say("ui-min"), set: (count) => { minutes = count; } })}
    ${goButton(say("span-about-go", { minutes }), () => reply({ answer: "about", minutes }))}`);
}
