// Questions of the shop: what was running after a restart; what is to settle.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { moment } from "../door/clock.js";
import { open } from "../door/later.js";
import { about, isUndone, press } from "../door/press.js";
import { loadTitle, personName, say, sayCode, slug, stationName } from "../door/words.js";
import { isPutAside, openLoads } from "./doing.js";
import { button } from "./sheet.js";

// What was said to be as it was: asked no more, unless the press is taken back.
const same = new Map();
const keyOf = (ask, load) => `${ask}|${load.run}|${load.id}`;
const isSaid = (key) => same.has(key) && !isUndone(same.get(key));

export function asks({ state }) {
  return [state.ahead ? datedAhead(state.ahead) : nothing, ...Object.entries(state.asks ?? {}).map(([id, ask]) => {
    const answered = () => press(say("did-asked"), [{ kind: "restart answered", body: { restart: id } }]);
    const running = openLoads(state).filter((load) => ["running", "loading", "working", "ended", "unloading"].includes(load.state) && !isPutAside(load))
      .sort((one, other) => (other.state === "running") - (one.state === "running")); // what may hurt somebody first
    return html`<section class="panel look"><h2>${sayCode("asks", ask.code, ask.facts) || ask.code}</h2>
      <p>${say("asks-since", { last: ask.facts?.last_at ?? "" })}</p>
      ${running.filter((load) => !isSaid(keyOf(id, load))).map((load) => wasRunning(state, load, keyOf(id, load)))}
      ${button(say(running.length ? "asks-that-is-all" : "asks-nothing"), answered, "go")}</section>`;
  })];
}

// The server's clock may be what is wrong, so it is shown beside what does not fit it.
const datedAhead = ({ count, last_at: last, now }) => html`<section class="panel look"><h2>${say("ahead-title")}</h2>
  <p>${say("ahead-words", { count, last, year: last.slice(0, 4), now, this_year: now.slice(0, 4) })}</p><p>${say("ahead-clock")}</p>
  <form method="post" action="/put-right"><button class="go">${say("ahead-go")}</button></form></section>`;

function wasRunning(state, load, key) {
  const title = loadTitle(state.runs[load.run], load);
  const runs = load.state === "running";
  const at = { ...about(load), ...(load.people?.length ? { person: load.people[0] } : {}) }; // whoever answers, the hands are theirs
  const still = () => same.set(key, press(say("did-still", { load: title }), [runs
    ? { kind: "machine started", ...about(load), body: load.end_at ? { minutes: Math.max(1, Math.round((Date.parse(load.end_at) - Date.now()) / 60_000)) } : {} }
    : { kind: "load started", ...at, body: { pieces: load.pieces } }]));
  const ended = () => press(runs ? say("did-ended", { station: stationName(state, load.station) }) : say("did-aside", { load: title }), [runs ? { kind: "machine ended", ...about(load) } : { kind: "load put aside", ...at }]);
  return html`<div class="asked"><p><b>${stationName(state, load.station)}</b>: ${title}</p><div class="pair">
    ${load.state === "ended" ? nothing : button(say(runs ? "asks-still" : "asks-at-it"), still)}${button(say(runs ? "asks-ended" : "asks-aside"), ended)}
    ${["working", "loading"].includes(load.state) ? nothing : button(say("asks-stopped"), () => open("stopped", load))}</div></div>`;
}

/** What is to settle: both versions, one press each. */
export function toSettle({ state }) {
  if (!state.unsettled?.length) return nothing;
  return html`<section><h2>${say("settle-title")}</h2><p class="soft">${say("settle-about")}</p><a class="button quiet" href="/help#away">${say("ui-how")}</a>
    ${state.unsettled.map((press) => entry(state, press))}${state.more?.unsettled ? html`<p class="soft">${say("settle-more", { count: state.more.unsettled })}</p>` : nothing}</section>`;
}

/** What was pressed, in words: 'Ann pressed 10:42: load done, sand/4'. */
const pressWords = (state, made) =>
  say("settle-press", { person: made.person ? personName(state, made.person) : say("ui-somebody"), at: moment(made.at), what: sayCode("kind", made.kind) || slug(made.kind), subject: subjectOf(state, made) });

function subjectOf(state, made) {
  if (made.load && made.operation) return loadTitle(state.runs?.[made.run], { id: made.load, step: made.operation, pieces: made.body?.pieces ?? made.body?.counts ?? {} });
  return made.tray ? say("ui-tray", { tray: made.tray }) : made.subject ?? "";
}

function entry(state, made) {
  const settle = (keep) => () => press(say(`did-settle-${keep}`), [{ kind: "entry settled", run: made.run ?? "", body: { event: made.event, keep } }]);
  return html`<div class="panel look"><p>${pressWords(state, made)}</p><p><b>${sayCode("refused", made.code, made.facts) || made.code}</b></p>
    <div class="pair">${button(say("settle-keep-shop"), settle("shop"))}${button(say("settle-keep-press"), settle("press"))}</div></div>`;
}
