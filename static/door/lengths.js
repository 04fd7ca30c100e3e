// Lengths in the shop's units: kept in millimetres, read and shown as the shop writes them.

const INCH = 25.4;

/** '12.5 mm'; '5 1/2 in' where it is a whole number of 64ths, else '0.118 in'; as `format_length` of the server. */
export function showLength(mm, units) {
  if (units !== "in") return `${Number(mm.toFixed(3))} mm`;
  let [top, under] = [Math.round((mm / INCH) * 64), 64];
  if (Math.abs(mm - (top * INCH) / 64) > 1e-7) return `${(mm / INCH).toFixed(3)} in`;
  while (under > 1 && top % 2 === 0) [top, under] = [top / 2, under / 2];
  const whole = Math.floor(top / under);
  const rest = top % under;
  return `${[whole || (rest ? "" : 0), rest ? `${rest}/${under}` : ""].filter((part) => part !== "").join(" ")} in`;
}

/** Millimetres from '5 1/2', '5-1/2"', '0.125 in', '3 mm'; NaN where it is none. */
export function readLength(text, units) {
  const [, number, unit] = text.trim().replace(",", ".").match(/^(.*?)\s*(mm|in|"|″)?$/i);
  const value = decimal(number) ?? fraction(number);
  const inches = unit ? unit.toLowerCase() !== "mm" : units === "in";
  return inches ? value * INCH : value;
}

const decimal = (text) => (/^\d+(\.\d+)?$/.test(text) ? Number(text) : undefined);

function fraction(text) {
  const match = text.match(/^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/);
  if (!match || Number(match[3]) === 0) return NaN;
  return Number(match[1] ?? 0) + Number(match[2]) / Number(match[3]);
}
