// When to draw again: many reasons, one drawing a turn.

let draw = () => {};
let queued = false;

export const setDraw = (how) => { draw = how; };

export function redraw() {
  if (queued) return;
  queued = true;
  queueMicrotask(() => { queued = false; draw(); });
}
