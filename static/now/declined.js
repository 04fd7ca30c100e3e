// 'Not this, because …': answers the proposed move, and is remembered.

import { html } from "../vendor/lit-html-3.3.3.js";
import { textField } from "./controls.js";
import { isoIn, press } from "./press.js";
import { declineReasons } from "./reasons.js";
import { closeSheet, openSheet, sheetHead } from "./sheet.js";
import { say } from "./words.js";

export function openNotThis(move, title) {
  let other = "";
  const decline = (because) => { closeSheet(); press(say("did-not-this", { what: title }), [{ kind: "move declined", run: move.run ?? "", body: { move: move.id, because, until: isoIn(60) } }]); };
  openSheet(() => html`${sheetHead(say("not-this-title", { what: title }))}<div class="stack">
    ${declineReasons().map(([, words]) => html`<button type="button" @click=${() => decline(words)}>${words}</button>`)}</div>
    ${textField(say("not-this-other"), other, (text) => { other = text; })}
    <button type="button" class="full" ?disabled=${!other.trim()} @click=${() => decline(other)}>${say("ui-ok")}</button>`);
}
