// The time: the server's clock as this phone knows it, and moments written for the shop's zone.

const FORGET_AFTER_MS = 10 * 60_000;
let offset = 0;
let shortest = Infinity;
let learnedAt = -Infinity;
let zone = "UTC";

/** Takes one exchange with the server: when it was sent and answered here, and the server's own moment. */
export function learn(sentMs, gotMs, serverIso) {
  const server = Date.parse(serverIso);
  const trip = gotMs - sentMs;
  if (Number.isNaN(server) || trip < 0) return;
  // The exchange with the shortest round trip knows best; a frozen server would add its whole freeze to each press.
  if (trip > shortest && gotMs - learnedAt < FORGET_AFTER_MS) return;
  shortest = trip;
  learnedAt = gotMs;
  offset = Math.round(server - (sentMs + trip / 2));
}

export const now = () => Date.now() + offset;
export const offsetMs = () => offset;
export const setZone = (name) => { if (name) zone = name; };
export const millis = (iso) => (iso ? Date.parse(iso) : NaN);

const made = new Map();
function format(options) {
  const key = zone + JSON.stringify(options);
  if (!made.has(key)) made.set(key, new Intl.DateTimeFormat("en-GB", { timeZone: zone, ...options }));
  return made.get(key);
}

const dayKey = (ms) => format({ year: "numeric", month: "2-digit", day: "2-digit" }).format(ms);

/** Today in the shop's zone, '2026-03-09' */
export function today() {
  const part = Object.fromEntries(format({ year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(now()).map((field) => [field.type, field.value]));
  return `${part.year}-${part.month}-${part.day}`;
}

/** Today's day of the week in the shop's zone, as the book calls it: 'mon' */
export const weekday = () => format({ weekday: "short" }).format(now()).toLowerCase().slice(0, 3);

/** '10:42' */
export const timeOfDay = (ms) => format({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(ms);

// Moments and spans are written as `runboard/words/facts.py` writes them.

const NBSP = "\u00a0"; // no line ends within a span or a day

/** '10:42' today, 'Sun 08:00' within six days, 'Thu 12 Mar, 17:00' beyond. */
export function moment(iso) {
  const ms = typeof iso === "number" ? iso : millis(iso);
  if (Number.isNaN(ms)) return "";
  if (dayKey(ms) === dayKey(now())) return timeOfDay(ms);
  const day = Object.fromEntries(format({ weekday: "short", day: "numeric", month: "short" }).formatToParts(ms).map((field) => [field.type, field.value]));
  return Math.abs(ms - now()) < 6 * 86_400_000 ? `${day.weekday}${NBSP}${timeOfDay(ms)}` : `${day.weekday}${NBSP}${dayMonth(day)}, ${timeOfDay(ms)}`;
}

export const dayMonth = ({ day, month }) => `${day}${NBSP}${month.slice(0, 3)}`;

/** '18 min', '2 h 05', '36 h', '14 days', '2 days 4 h'; in whole minutes, since pages count them down. */
export function span(minutes) {
  const whole = Math.max(0, Math.round(minutes));
  const hours = Math.floor(whole / 60);
  if (!hours) return `${whole}${NBSP}min`;
  if (hours < 48) return `${hours}${NBSP}h${whole % 60 ? `${NBSP}${String(whole % 60).padStart(2, "0")}` : ""}`;
  const all = Math.round(whole / 60);
  return `${Math.floor(all / 24)}${NBSP}days${all % 24 ? `${NBSP}${all % 24}${NBSP}h` : ""}`;
}

export const minutesTo = (iso) => (millis(iso) - now()) / 60_000;

/** The moment (ms) of 'hh:mm' in the shop's zone on the day of `near`, moved by whole days. */
export function atLocal(hhmm, near = now(), days = 0) {
  const [hours, minutes] = hhmm.split(":").map(Number);
  const parts = Object.fromEntries(
    format({ year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(near).map((part) => [part.type, Number(part.value)]),
  );
  const wanted = Date.UTC(parts.year, parts.month - 1, parts.day + days, hours, minutes);
  // Two rounds settle it even across a clock change.
  let guess = wanted;
  for (let round = 0; round < 2; round += 1) guess = wanted - zoneOffset(guess);
  return guess;
}

function zoneOffset(ms) {
  const options = { year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" };
  const part = Object.fromEntries(format(options).formatToParts(ms).map((field) => [field.type, Number(field.value)]));
  return Date.UTC(part.year, part.month - 1, part.day, part.hour, part.minute, part.second) - Math.floor(ms / 1000) * 1000;
}
