// The shapes of states. Colour is never alone: each state has a shape and a word of its own.

import { svg, html } from "../vendor/lit-html-3.3.3.js";

const SHAPES = {
  running: svg`<circle cx="12" cy="12" r="10.5" class="fill"/><path d="M9.3 7.2v9.6l7.6-4.8z" class="on"/>`,
  "needs unloading": svg`<rect x="2" y="2" width="20" height="20" rx="3" class="fill"/><path d="M12 17V8m-4 4 4-4.5 4 4.5" class="stroke-on"/>`,
  overdue: svg`<path d="M12 1.5 23 21.5H1z" class="fill"/><path d="M12 8.5v6m0 2.4v.6" class="stroke-on"/>`,
  "stopped early": svg`<path d="M7.6 1.5h8.8l6.1 6.1v8.8l-6.1 6.1H7.6l-6.1-6.1V7.6z" class="fill"/><path d="M8 12h8" class="stroke-on"/>`,
  "watch check due": svg`<path d="M12 1 23 12 12 23 1 12z" class="fill"/><path d="M12 6.8v6.4m0 2.6v.6" class="stroke-on"/>`,
  "at it": svg`<rect x="2" y="2" width="20" height="20" rx="3" class="line"/><circle cx="12" cy="12" r="4" class="fill"/>`,
  "put aside": svg`<rect x="3" y="3" width="18" height="18" rx="3" class="line"/><path d="M9.5 8v8m5-8v8" class="stroke"/>`,
  "out of use": svg`<circle cx="12" cy="12" r="9.5" class="line"/><path d="m5.5 5.5 13 13" class="stroke"/>`,
  idle: svg`<circle cx="12" cy="12" r="9" class="line dashed"/>`,
};

/** The shape of a machine's state, coloured by its class. */
export const shape = (state) =>
  html`<svg class="shape ${state.replaceAll(" ", "-")}" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${SHAPES[state] ?? SHAPES.idle}</svg>`;
