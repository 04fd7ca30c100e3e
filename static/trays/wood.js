// The wood and the board of a tray.

import { html } from "../vendor/lit-html-3.3.3.js";
import { press } from "../door/press.js";
import { closeSheet, openSheet, sheetHead, textField } from "../views/sheet.js";
import { say } from "../door/words.js";

export function openWood(runId, tray) {
  const it = { wood: tray.wood ?? "", board: tray.board ?? "" };
  const record = () => {
    closeSheet();
    press(say("did-wood", { tray: tray.id, wood: it.wood }), [{ kind: "wood noted", run: runId, tray: tray.id, body: { ...it } }]);
  };
  openSheet(() => html`${sheetHead(say("trays-wood"))}
    ${textField(say("trays-wood-wood"), it.wood, (text) => { it.wood = text; })}
    ${textField(say("trays-wood-board"), it.board, (text) => { it.board = text; })}
    <button type="button" class="go" @click=${record}>${say("ui-ok")}</button>`);
}
