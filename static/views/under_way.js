// The cautions of what is under way, each once: of what one's hands are at, then of the machines that one watches as long as
// they run. What matters while a machine runs stays readable below the machines; the rest is folded to its signs beside the
// sentence. What the step above says already is left out.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { sayLater, stepOf } from "../door/words.js";
import { cautions, signs } from "./cautions.js";
import { careOf, handsOf, loadScene, watchedBy } from "./doing.js";
import { openMoves } from "./moves.js";

const READABLE = ["stay-and-watch", "fire"];
const nameOf = ({ key, text }) => key ?? text;

/** What is read at any time while machines run. */
export const readable = (scene) => cautions({ care: all(scene).filter(({ key }) => READABLE.includes(key)) });

/** The others, by their signs. */
export function folded(scene) {
  const care = all(scene).filter(({ key }) => !READABLE.includes(key));
  const numbers = [...new Set(care.flatMap((caution) => caution.signs ?? []))];
  return care.length ? html`<details class="care"><summary>${signs(numbers)}<span>${sayLater("en.sheets", "cautions-more", { count: care.length })}</span></summary>${cautions({ care })}</details>` : nothing;
}

function all({ state, me }) {
  const hands = handsOf(state, me);
  const isBefore = !hands || hands.load?.state === "loading";
  const said = new Set(isBefore ? (hands?.step ?? nextStep(state, me))?.care?.map(nameOf) : []);
  const watched = watchedBy(state, me).filter((load) => !load.said).map((load) => loadScene(state, load));
  const care = [isBefore ? {} : hands, ...watched].flatMap(({ step, load }) => careOf(step, load)).filter((caution) => !said.has(nameOf(caution)));
  return [...new Map(care.map((caution) => [nameOf(caution), caution])).values()];
}

// The step that the sentence offers.
function nextStep(state, me) {
  const move = openMoves(state, me)[0];
  return move && stepOf(state.runs?.[move.run], move.step, move.trays?.[0]);
}
