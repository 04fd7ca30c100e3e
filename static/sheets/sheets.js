// Every sheet by its name, and what fetches the function that opens it. Screens offer them, and `open(name, …)` of
// door/later.js opens one: no view knows where a sheet lies.

export const SHEETS = {
  away: async () => (await import("./leaving.js")).calledAway,
  count: async () => (await import("./bad_piece.js")).openCount,
  early: async () => (await import("./early.js")).openEarly,
  "first piece": async () => (await import("./first_piece.js")).openFirstPiece,
  "how many": async () => (await import("./leaving.js")).openHowMany,
  load: async () => (await import("./load.js")).openLoad,
  "lock-up": async () => (await import("./leaving.js")).openLockUp,
  "not this": async () => (await import("./wrong.js")).openNotThis,
  said: async () => (await import("../alerts/answers.js")).openSaid,
  "start list": async () => (await import("./start_list.js")).openStartList,
  stopped: async () => (await import("./stopped.js")).openStopped,
  wrong: async () => (await import("./wrong.js")).openWrong,
};
