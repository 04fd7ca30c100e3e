// Lengths in the shop's units: kept in millimetres, read and shown as the shop writes them.

const INCH = 25.4;

/** '12.5 mm' or '0.492 in' */
export const showLength = (mm, units) =>
  units === "in" ? `${Number((mm / INCH).toFixed(4))} in` : `${Number(mm.toFixed(3))} mm`;

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
