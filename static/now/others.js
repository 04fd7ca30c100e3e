// What else could be done, folded; and what holds work up for everybody.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { open } from "../door/later.js";
import { jobOf, press } from "../door/press.js";
import { list, loadTitle, personName, say, stationName, stepOf } from "../door/words.js";
import { stoppedNotice } from "../views/below.js";
import { cautions } from "../views/cautions.js";
import { handsOf, isPutAside, openLoads, watchedBy } from "../views/doing.js";
import { moveWords, openMoves, reason } from "../views/moves.js";
import { button, closeSheet, openSheet, sheetHead } from "../views/sheet.js";
import { moveButton } from "./first.js";
import { planWords, priceWords, why } from "./plan_words.js";

export { why };

export function others(scene) {
  const { state, me } = scene;
  const moves = openMoves(state, me);
  const shown = handsOf(state, me) ? moves : moves.slice(1);
  const known = new Set(moves.map((move) => `${move.run}/${move.load}`));
  const watched = watchedBy(state, me);
  // Who watches is shown what may be done in sight of it.
  const inSight = (load) => watched.every((one) => state.stations?.[one.station]?.watch_ok?.includes(load.station));
  const aside = openLoads(state).filter((load) => isPutAside(load) && inSight(load) && !known.has(`${load.run}/${load.id}`));
  const joined = openLoads(state).filter((load) => ["loading", "working", "unloading"].includes(load.state) && load.people?.length && !load.people.includes(me) && inSight(load));
  const offered = new Set(moves.filter((move) => move.code === "job").map(jobOf));
  // Nobody is sent off while a machine wants their eyes.
  const jobs = watched.length ? [] : Object.entries(state.jobs ?? {}).filter(([key]) => !offered.has(key));
  const plan = planWords(scene);
  if (!shown.length && !aside.length && !joined.length && !jobs.length) return plan;
  return html`${plan}<details><summary>${say(watched.length ? "ui-others-watching" : "ui-others")}</summary><ul class="rows">
    ${shown.map((move) => moveRow(scene, move))}
    ${aside.map((load) => loadRow(state, load, say("others-aside", { station: stationName(state, load.station) })))}
    ${joined.map((load) => loadRow(state, load, atIt(state, load)))}
    ${jobs.map(([key, job]) => row(job.name, say("others-job", { minutes: Math.round(job.minutes ?? 0) }),
      button(say("go-start"), () => press(say("did-job", { job: job.name }), [{ kind: "job started", body: { job: key } }]))))}
  </ul></details>`;
}

const row = (title, soft, button) => html`<li class="row"><span>${title}<br><span class="soft">${soft}</span></span>${button}</li>`;

const loadRow = (state, load, words) => row(loadTitle(state.runs[load.run], load), words, button(say("ui-open"), () => open("load", load)));

// Who is at it; two may be at one load.
function atIt(state, load) {
  const who = say("state-at-it", { person: list(load.people.map((key) => personName(state, key))), doing: say(`doing-${load.state}`) });
  return `${who} · ${stationName(state, load.station)}`;
}

// Whatever the press in the sheet opens or starts, the sheet it stood in is gone.
const closes = { handleEvent: ({ target }) => target.closest("button") && closeSheet(), capture: true };

function moveRow(scene, move) {
  const title = moveWords(scene.state, move);
  const step = stepOf(scene.state.runs?.[move.run], move.step, move.trays?.[0]);
  const look = () => openSheet(() => html`${sheetHead(title)}${cautions(step)}<p>${reason(move)}</p>${move.price ? html`<p>${priceWords(scene.state, move)}</p>` : nothing}<div @click=${closes}>${moveButton(scene, move)}</div>`);
  const soft = [reason(move), stationName(scene.state, move.station), priceWords(scene.state, move)].filter(Boolean).join(" · ");
  return row(title, soft, ["free", "watch"].includes(move.code) ? nothing : button(say("ui-open"), look));
}

export function stoppedOperations({ state, me, runs }) {
  const mine = handsOf(state, me);
  return runs.map((run) => html`
    ${Object.keys(run.stopped ?? {}).filter((key) => !(mine?.run === run && mine?.step?.key === key)).map((key) => {
      const step = stepOf(run, key);
      return step ? stoppedNotice({ run, step, load: { id: "", run: run.id, step: key, station: step.station } }) : nothing;
    })}
    ${Object.entries(run.out ?? {}).map(([supply, until]) => html`<p class="row"><span>${say(until ? "out-of-until" : "out-of", { supply, until: until ?? "" })}</span>
      ${button(say("out-is-there"), () => press(say("did-in", { supply }), [{ kind: "supply in", run: run.id, body: { supply } }]))}</p>`)}`);
}
