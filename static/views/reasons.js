// The reasons that a person can press instead of typing.

import { say } from "../door/words.js";

const words = (prefix, keys) => keys.map((key) => [key, say(`${prefix}-${key}`)]);

export const scrapReasons = () => words("scrap", ["tear-out", "crack", "size", "surface", "engraving", "burnt", "knot", "other"]);
export const stopReasons = () => words("stop", ["power", "cutter", "slip", "failed", "other"]);
export const declineReasons = () => words("not-this", ["waiting", "short", "tired", "other-person", "not-ready", "noise"]);
