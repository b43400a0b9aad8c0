/** Writes numbers for the screen. The core never rounds; rounding lives here. */
import { type LengthUnit, lengthIn, MM_PER_INCH } from "./parse.ts";

const FINEST = 64;

interface Fraction {
  /** Such as "1 3/16", "3/16", "0" or "2". */
  text: string;
  /** What the fraction leaves out, in inches; 0 when it is exact. */
  rest: number;
}

/** The nearest 64th of an inch, in lowest terms, and what it leaves out. */
export function nearestFraction(mm: number): Fraction {
  const inches = lengthIn(mm, "in");
  const steps = Math.round(inches * FINEST);
  const left = inches - steps / FINEST;
  // Below a millionth of an inch it is the decimal form of a fraction, not a remainder.
  const rest = Math.abs(left) < 1e-6 ? 0 : left;
  const whole = Math.floor(steps / FINEST);
  let top = steps % FINEST;
  let bottom = FINEST;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const share = top === 0 ? "" : `${top}/${bottom}`;
  return { text: [whole > 0 || share === "" ? whole : "", share].join(" ").trim(), rest };
}

/** So many times surer than its remainder must a length be for the remainder to be worth reading. */
const WORTH = 4;

/**
 * "= 3/16 in", or "≈ 17/32 in − 0.004" with the remainder in inches; without it where the expanded
 * uncertainty is far larger.
 */
export function fractionText(mm: number, expandedMm = 0): string {
  const near = nearestFraction(mm);
  if (near.rest === 0) return `= ${near.text} in`;
  // Less than the finest mark of a rule has no fraction.
  if (near.text === "0") return `≈ ${(mm / MM_PER_INCH).toFixed(4)} in`;
  const size = Math.abs(near.rest);
  if (size * WORTH < lengthIn(expandedMm, "in")) return `≈ ${near.text} in`;
  const digits = size < 0.0005 ? 4 : 3;
  return `≈ ${near.text} in ${near.rest < 0 ? "−" : "+"} ${size.toFixed(digits)}`;
}

/**
 * Decimals worth showing beside an expanded uncertainty: to its first figure that counts, two
 * when it starts with 1 or 2 (so that rounding never changes it by more than a quarter).
 */
export function decimalsFor(expanded: number): number {
  if (!(expanded > 0) || !Number.isFinite(expanded)) return 2;
  const exponent = Math.floor(Math.log10(expanded));
  const lead = Math.floor(expanded / 10 ** exponent + 1e-9);
  return Math.min(6, Math.max(0, -exponent + (lead <= 2 ? 1 : 0)));
}

/** Fixed decimals with a real minus sign, and no "−0". */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  if (Number(text) === 0) return text.replace("-", "");
  return text.replace("-", "−");
}

/** A length in its unit: 4.763 mm, 0.1875 in. Trailing zeros go, three or four decimals stay. */
export function lengthText(mm: number, unit: LengthUnit): string {
  return `${trimmed(lengthIn(mm, unit), unit === "in" ? 4 : 3)} ${unit}`;
}

/** Decimals of an inch for so many of a millimetre: thousandths tell a tenth, and a hundredth too. */
export const inchDecimals = (ofMm: number): number => (ofMm < 2 ? ofMm + 2 : ofMm + 1);

/** Decimals up to the first figure that counts, so that what is small is not written as nothing. */
export const firstDecimal = (value: number): number =>
  value === 0 ? 0 : Math.max(0, -Math.floor(Math.log10(Math.abs(value))));

/** A round length of the core as a number, in inches no finer than it is told: 280 mm are 11.02. */
export function roundNumber(mm: number, unit: LengthUnit): string {
  if (unit === "mm") return trimmed(mm, 3);
  const inches = lengthIn(mm, unit);
  const told = trimmed(mm, 4).split(".")[1]?.length ?? 0;
  const first = firstDecimal(inches);
  return trimmed(inches, Math.max(first, Math.min(4, Math.max(inchDecimals(told), first + 1))));
}

/** The same with its unit. */
export const roundLength = (mm: number, unit: LengthUnit): string =>
  `${roundNumber(mm, unit)} ${unit}`;

/** A kept length as it can be saved again unchanged: in inches if chosen and exact, else in mm. */
export function exactLength(mm: number, unit: LengthUnit): string {
  const inches = trimmed(lengthIn(mm, "in"), 6);
  const exact = Math.abs(Number(inches) * MM_PER_INCH - mm) < 1e-9;
  return unit === "in" && exact ? `${inches} in` : `${trimmed(mm, 6)} mm`;
}

/** Below this an uncertainty adds nothing that anyone could see. */
const LEAST = 0.000001;

/** An uncertainty to two figures, without exponents: 0.0021, 13, "< 0.000001". */
export function twoFigures(u: number): string {
  if (u > 0 && u < LEAST) return `< ${trimmed(LEAST, 6)}`;
  const decimals = u > 0 ? Math.max(0, 1 - Math.floor(Math.log10(u))) : 0;
  return fixed(u, decimals);
}

/** At most `decimals` decimals, without trailing zeros. */
export function trimmed(value: number, decimals: number): string {
  return fixed(Number(value.toFixed(decimals)), decimals)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");
}

/** What an entry was read as, for the line under its field; who works in mm alone reads no inches. */
export function echoLength(mm: number, typed: LengthUnit, all: LengthUnit | null): string {
  if (typed === "mm")
    return all === "mm" ? lengthText(mm, "mm") : `${lengthText(mm, "mm")} ${fractionText(mm)}`;
  const inches = trimmed(lengthIn(mm, "in"), 4);
  const shown = trimmed(mm, 4);
  const exact = Math.abs(Number(shown) - mm) < 1e-9;
  return `${inches} in ${exact ? "=" : "≈"} ${shown} mm`;
}
