// What holds work up for everybody: an operation stopped by its first piece, something that ran out.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { stoppedNotice } from "./details.js";
import { handsOf } from "./doing.js";
import { stepOf } from "./names.js";
import { press } from "./press.js";
import { say } from "./words.js";

export function stoppedOperations({ state, me, runs }) {
  const mine = handsOf(state, me);
  return runs.map((run) => html`
    ${Object.keys(run.stopped ?? {}).filter((key) => !(mine?.run === run && mine?.step?.key === key)).map((key) => {
      const step = stepOf(run, key);
      return step ? stoppedNotice({ run, step, load: { id: "", run: run.id, step: key, station: step.station } }) : nothing;
    })}
    ${Object.entries(run.out ?? {}).map(([supply, until]) => html`<p class="row"><span>${say(until ? "out-of-until" : "out-of", { supply, until: until ?? "" })}</span>
      <button type="button" @click=${() => press(say("did-in", { supply }), [{ kind: "supply in", run: run.id, body: { supply } }])}>${say("out-is-there")}</button></p>`)}`);
}
