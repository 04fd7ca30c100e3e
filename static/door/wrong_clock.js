// A device whose own clock is far off: said once, since its alarms and its calendar go by that clock. Presses do not.

import { html, nothing } from "../vendor/lit-html-3.3.3.js";
import { offsetMs } from "./clock.js";
import { recall, remember } from "./remembered.js";

const FAR_MS = 5 * 60_000;
const SAID = "runboard.clock";

/** The notice, in the words of `say`, until it was read; once the clock is right it is said again when it goes wrong. */
export function wrongClock(say, redraw) {
  const said = recall(SAID);
  const isWrong = Math.abs(offsetMs()) > FAR_MS;
  if (!isWrong && said) remember(SAID, "");
  return !isWrong || said ? nothing
    : html`<section class="panel note look" role="status"><p>${say("clock-wrong")}</p><button type="button" class="full" @click=${() => { remember(SAID, "said"); redraw(); }}>${say("press-read")}</button></section>`;
}
