// The wall page: machines, times and what wants somebody, for a whole room. It is drawn from the same state as Now, and
// fits itself to its screen, because nobody scrolls a wall.

import { html, nothing, render } from "../vendor/lit-html-3.3.3.js";
import { moment, now } from "../door/clock.js";
import { isDanger, isOthers, ringing } from "../views/doing.js";
import { onOutbox, openOutbox } from "../door/outbox.js";
import { redraw, setDraw } from "../views/sheet.js";
import { me, onShop, openShop, serverReached, shop } from "../door/shop.js";
import { openWords, say } from "../door/words.js";
import { calls } from "./calls.js";
import { machines } from "./machines.js";
import { people } from "./people.js";
import { waits } from "./waits.js";

const LARGEST = 1.4;
const SMALLEST = 0.5;
const STEP = 0.05;
const root = document.getElementById("wall");
let reachedAt = NaN;

/** What everybody is called for: a session's end is its own person's affair, on their own phone. */
const callsOf = (state) => ringing(state).filter((due) => due.kind !== "session end");

function page(state) {
  const due = callsOf(state);
  const parts = [machines(state), people(state), waits(state)];
  return html`
    <header><h1>${state.shop?.name ?? ""}</h1><time>${moment(now())}</time></header>
    ${serverReached() ? nothing : html`<p class="away" role="status">${say("wall-no-server", { at: moment(reachedAt) })}</p>`}
    ${calls(state, due, me())}
    <div class=${parts[1] === nothing && parts[2] === nothing ? "one" : "both"}><div>${parts[0]}</div><div>${parts[1]}${parts[2]}</div></div>
    ${due.length || parts.some((part) => part !== nothing) ? nothing : html`<p class="quiet">${say("wall-quiet")}</p>`}`;
}

function draw() {
  const state = shop();
  if (!state) return;
  if (serverReached()) reachedAt = now();
  // One root, one class: the frame flashes for everybody, red only for what is dangerous. What somebody is asked alone at
  // first is shown without it.
  const due = callsOf(state).filter((one) => !isOthers(one, ""));
  document.body.className = due.length ? `calls ${due.some((one) => isDanger(one, state)) ? "danger-calls" : ""}` : "";
  render(page(state), root);
  fit();
}

let fitted = "";

// As large as it can be; measured again where words have changed, not for each minute that passes.
function fit() {
  const key = `${window.innerWidth}x${window.innerHeight} ${root.textContent.replaceAll(/\d/g, "0")}`;
  if (key === fitted) return;
  fitted = key;
  for (let size = LARGEST; size >= SMALLEST; size -= STEP) {
    root.style.setProperty("--fit", size.toFixed(2));
    if (root.scrollHeight <= window.innerHeight && root.scrollWidth <= window.innerWidth) return;
  }
}

async function stayAwake() {
  // The screen of a tablet goes dark otherwise; where there is no wake lock, its own settings must say so.
  if (document.visibilityState === "visible") await navigator.wakeLock?.request("screen").catch(() => {});
}

setDraw(draw);
onShop(redraw);
onOutbox(redraw);
window.addEventListener("resize", redraw);
document.addEventListener("visibilitychange", stayAwake);
await Promise.all([openWords(), openWords("en.sheets"), openWords("en.wall"), openWords("en.care"), openOutbox()]);
void stayAwake();
void openShop();
setInterval(redraw, 1000);
