// The first thing on Now: what I am in the middle of, or what I could do now; one sentence, one big button. The button is for
// the foot, where it is always in sight: each function here gives the two as [section, big].

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { open, part } from "../door/later.js";
import { doneWords, finishLoad, handOver, isListed, jobOf, leftAt, loadOf, nextWords, press, startDraft, startLoad, startUnloading } from "../door/press.js";
import { serverReached } from "../door/shop.js";
import { loadTitle, loadWords, personName, roomName, say, stepOf } from "../door/words.js";
import { cautions } from "../views/cautions.js";
import { careOf, givenOf, handsOf, isCoat, listOf, loadAt, loadScene, ringingFor, wantsList, watchedBy } from "../views/doing.js";
import { moveWords, nextMove, openMoves, reason, titleOf } from "../views/moves.js";
import { listedButton, minutesStepper, runButton, runPress, toSee } from "../views/operation.js";
import { button } from "../views/sheet.js";

export function first(scene) {
  const person = scene.state.people?.[scene.me];
  if (person?.away) return backFromAway(scene, person);
  const hands = handsOf(scene.state, scene.me);
  const moves = openMoves(scene.state, scene.me);
  if (hands?.job) return doingJob(scene, hands.job, moves);
  if (hands) return doingLoad(scene, hands, moves);
  return couldDo(scene, moves[0], moves.slice(1));
}

/** One quiet line above the sentence: since when or why, which station, which room. */
function above(state, words, station) {
  const here = state.stations?.[station];
  const parts = [words?.replace(/\.$/, ""), here?.name, here && roomName(state, here.room)].filter(Boolean).join(" · ");
  return html`<p class="since">${parts}</p>`;
}

const since = (iso) => (iso ? say("first-since", { since: iso }) : "");

function doingJob(scene, job, moves) {
  const { state, me } = scene;
  const next = nextMove(moves);
  const done = { kind: "job done", body: { job: job.key } };
  return [html`<section class="now">${above(state, since(state.people[me].hands_since))}<h1>${job.name}</h1>
    ${next ? html`<p class="soft">${say("first-after", { what: titleOf(state, next) })}</p>` : nothing}${toTakeOver(state, moves)}${folded(scene)}</section>`,
  button(say("go-job-done"), () => press(say("did-job-done", { job: job.name }), [done]), "go")];
}

// Before it begins, the cautions are read first; once it is under way they are folded to their signs.
function doingLoad(scene, here, moves) {
  const { state, me } = scene;
  const { run, load, step } = here;
  const before = load.state === "loading";
  return [html`<section class="now">
    ${above(state, since(state.people[me].hands_since), load.station)}
    <h1>${say(`first-${load.state}`, { step: step?.name ?? load.step, what: loadWords(run, load) })}</h1>
    ${givenWords(scene, run, load.step, Object.keys(load.pieces))}
    ${before ? cautions(step) : folded(scene)}${labelOf(scene, step)}${step?.personal ? part("positions")?.textsOn(run, load) : nothing}
    ${toSee(here, me)}${before ? [minutesStepper(here), folded(scene)] : nothing}${toTakeOver(state, moves)}
  </section>`, before ? runPress(here, me) : goOnButton(scene, here, moves)];
}

/** 'Watch the Laser from 19:12', where the plan says so and it is not what comes first. */
const toTakeOver = (state, moves) =>
  moves.filter((move) => move.code === "take over" && move.facts?.at).map((move) => html`<p class="soft">${moveWords(state, move)}</p>`);

/** What is under way beside what is begun, by the signs of its cautions. */
const folded = (scene) => (hasUnderWay(scene) ? part("under way")?.folded(scene) : nothing);

/** Whether hands are at something, or a machine is watched. */
export const hasUnderWay = ({ state, me }) => Boolean(handsOf(state, me) || watchedBy(state, me).length);

function goOnButton(scene, here, moves) {
  const { load, station } = here;
  const points = listOf(here).length;
  if (load.state === "working" && wantsList(here, scene.me)) return button(say("go-list", { points }), () => open("start list", here), "go");
  if (load.state === "working" && station?.start && !isListed(load)) return listedButton(here);
  const given = givenOf(here.run, load.step, Object.keys(load.pieces));
  const looks = given?.look && given.to === scene.me ? part("handing")?.showFirst(scene, here) : nothing;
  return looks === nothing ? doneButton(scene, here, moves) : looks;
}

/** Who was given this by the lead, if anybody was. */
function givenWords({ state, me }, run, step, trays) {
  const given = givenOf(run, step, trays);
  return given ? html`<p class="given">${given.to === me ? say("given-you") : say("given-other", { person: personName(state, given.to) })}</p>` : nothing;
}

/** What the label of a finish says, before it is brought on. */
const labelOf = ({ state }, step) => (isCoat(step) ? part("finish")?.label(state, step) : nothing);

function doneButton({ state }, { run, load }, moves) {
  const next = nextMove(moves);
  const alerts = next ? ringingFor(state, { run: next.run, id: next.load }) : [];
  return button(`${doneWords(run, load)}${next ? `. ${nextWords(load, next)}` : ""}`, () => finishLoad(run, load, next, { alerts }), "go");
}

/** Without an open run the page says what comes first. */
function nothingYet(state) {
  const bare = !Object.keys(state.stations ?? {}).length;
  return [html`<section class="now"><h1>${say(bare ? "first-bare" : "first-nothing")}</h1><p>${say(bare ? "first-no-shop" : "first-no-run")}</p></section>`,
    html`<a class="button go" href=${bare ? "/shop/first" : "/plan"}>${say(bare ? "go-shop" : "go-plan")}</a>`];
}

function couldDo(scene, move, rest) {
  const { state } = scene;
  if (!scene.runs.length && (!move || move.code === "free")) return nothingYet(state);
  if (!move) return [html`<section class="now"><h1>${say("first-nothing")}</h1><p>${say(serverReached() ? "first-nothing-more" : "first-nothing-known")}</p>${folded(scene)}</section>`, nothing];
  const step = stepOf(state.runs?.[move.run], move.step, move.trays?.[0]);
  const here = move.code === "run" && loadScene(state, loadAt(state, [move.run, move.load]));
  return [html`<section class="now">
    ${above(state, reason(move), move.station)}
    <h1>${moveWords(state, move)}</h1>
    ${givenWords(scene, state.runs?.[move.run], move.step, move.trays ?? [])}
    ${cautions({ care: careOf(step, loadAt(state, [move.run, move.load])) })}${labelOf(scene, step)}${here ? [toSee(here, scene.me), minutesStepper(here)] : nothing}${toTakeOver(state, rest)}${folded(scene)}
  </section>`, here ? runPress(here, scene.me) : moveButton(scene, move)];
}

/** The big button of a move. */
export function moveButton({ state, me }, move) {
  const go = (words, action) => button(words, action, "go");
  const load = loadAt(state, [move.run, move.load]);
  if (["start", "wipe"].includes(move.code)) return go(say("go-start"), () => startLoad(loadOf(move)));
  if (move.code === "go on") return go(say("go-go-on"), () => startLoad(load));
  if (move.code === "run") return runButton(loadScene(state, load), me);
  if (move.code === "unload") return go(say("go-at-it"), () => startUnloading(load, ringingFor(state, load)));
  if (move.code === "take over") return go(say("go-take-over"), () => handOver([load], me, state.people[me]));
  if (move.code === "settle") return go(say("go-settle"), () => open("load", load));
  if (move.code === "finish") return go(doneWords(state.runs[move.run], load), () => finishLoad(state.runs[move.run], load));
  if (move.code === "job") {
    const job = jobOf(move);
    return go(say("go-start"), () => press(say("did-job", { job: state.jobs?.[job]?.name ?? "" }), [{ kind: "job started", body: { job } }]));
  }
  return move.code === "stop" ? go(say("go-stop"), () => open("lock-up")) : nothing;
}

/** After being called away: back, or back and on with what was left. */
function backFromAway(scene, person) {
  const load = loadAt(scene.state, leftAt());
  const back = { kind: "person came back" };
  const words = say("did-back");
  const onWith = () => (load.state === "working" ? open("how many", scene, load) : press(words, [back, startDraft(load)]));
  return [html`<section class="now"><p class="since">${say("away-since", { since: person.seen_at })}</p><h1>${say("away-h1")}</h1>
    ${["loading", "working", "unloading"].includes(load?.state) ? button(say("away-back-to", { load: loadTitle(scene.state.runs[load.run], load) }), onWith, "full") : nothing}</section>`, button(say("away-back"), () => press(words, [back]), "go")];
}
