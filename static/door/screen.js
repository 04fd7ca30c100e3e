// What draws: a screen is drawn from its scene at each change of the state, of the outbox and of what is open on it, and
// each second. Nothing else calls `render`.

import { render } from "../vendor/lit-html-3.3.3.js";
import { onOutbox, openOutbox } from "./outbox.js";
import { me, onShop, openShop, shop } from "./shop.js";

let draw = () => {};
let queued = false;

/** Draws again, soon; several wishes are one drawing. */
export function redraw() {
  if (queued) return;
  queued = true;
  queueMicrotask(() => { queued = false; draw(); });
}

/**
 * Opens a screen in `root`. `sceneOf(state, me)` is what its views are functions of, `page(scene)` its template. `drawn(scene,
 * isFirst)` is called after each drawing, `second(scene)` at each new state and each second. `words` are waited for, and
 * `hears` says whether this page may sound.
 */
export async function openScreen(root, { sceneOf, page, words, drawn = () => {}, second = () => {}, hears }) {
  let isFirst = true;
  draw = () => {
    if (!shop()) return;
    const scene = sceneOf(shop(), me());
    if (isFirst) root.replaceChildren();
    render(page(scene), root);
    drawn(scene, isFirst);
    isFirst = false;
  };
  const tick = () => {
    if (shop()) second(sceneOf(shop(), me()));
    redraw();
  };
  onShop(tick); // what fell due rings when it is heard of, not at the next second
  onOutbox(redraw);
  await Promise.all([...words, openOutbox()]);
  void openShop(hears);
  setInterval(tick, 1000);
}
