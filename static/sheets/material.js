// What a load is made of, and whether the shop lets it come under a machine that heats.

import { inOrder } from "../door/words.js";

const woodOf = (run, tray) => run.trays?.[tray]?.wood || run.wood || "";

/** The materials of a load, each once. */
export const materials = ({ run, load }) => [...new Set(Object.keys(load.pieces ?? {}).map((tray) => woodOf(run, tray)))].filter(Boolean);

/** The trays of which nobody noted what they are made of. */
export const unknownTrays = ({ run, load }) => inOrder(Object.keys(load.pieces ?? {}).filter((tray) => !woodOf(run, tray)));

/** Whether a material is on the shop's list, as the server judged it. */
export const isForbidden = (run, material) => run.judged?.[material]?.says === "forbidden";

/** The materials of a load whose data sheet nobody has looked at yet in this run. */
export const toLookAt = ({ run, load }) =>
  materials({ run, load }).filter((one) => run.judged?.[one]?.says === "look" && !run.materials?.includes(one));
