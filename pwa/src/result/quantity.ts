/** How a quantity of the core is written on the screen. */
import { lengthOfAll, settings } from "../store/settings.ts";
import { decimalsFor, fixed, fractionText, inchDecimals } from "../units/format.ts";
import { type LengthUnit, MM_PER_INCH } from "../units/parse.ts";
import { POWER_SIGNS, powerIn } from "../units/power.ts";

interface Shown {
  value: string;
  plusMinus: string;
  unit: string;
}

/** Value by which a quantity of the core is divided for the screen, and its unit there. */
export function scaleOf(quantity: string, length: LengthUnit): { by: number; unit: string } {
  if (quantity.endsWith("_percent")) return { by: 1, unit: "%" };
  if (quantity.endsWith("_deg")) return { by: 1, unit: "°" };
  if (quantity.endsWith("_h")) return { by: 1, unit: "h" };
  if (quantity.endsWith("_min")) return { by: 1, unit: "min" };
  if (quantity.endsWith("_ratio")) return { by: 1, unit: ": 1" };
  if (quantity.endsWith("_kw")) {
    const unit = settings.value.power;
    return { by: 1 / powerIn(1, unit), unit: POWER_SIGNS[unit] };
  }
  return length === "in" ? { by: MM_PER_INCH, unit: "in" } : { by: 1, unit: "mm" };
}

/** A value beside its expanded uncertainty, both to the same decimals. */
export function show(quantity: string, value: number, expanded: number, length: LengthUnit): Shown {
  const { by, unit } = scaleOf(quantity, length);
  const decimals = decimalsFor(expanded / by);
  return {
    value: fixed(value / by, decimals),
    plusMinus: fixed(expanded / by, decimals),
    unit,
  };
}

/** An interval whose ends need not lie evenly about the value. */
export function showInterval(
  quantity: string,
  at: { value: number; low: number; high: number },
  length: LengthUnit,
): { value: string; low: string; high: string; unit: string } {
  const { by, unit } = scaleOf(quantity, length);
  const decimals = decimalsFor((at.high - at.low) / 2 / by);
  const [value, low, high] = [at.value, at.low, at.high].map((x) => fixed(x / by, decimals));
  return { value: value ?? "", low: low ?? "", high: high ?? "", unit };
}

/** A length [mm] with its unit, to so many decimals of a millimetre, or enough of an inch. */
export function lengthTo(mm: number, length: LengthUnit, decimals: number): string {
  return withUnit(numberTo(mm, length, decimals), length);
}

/** The same without the unit. */
export function numberTo(mm: number, length: LengthUnit, decimals: number): string {
  const { by } = scaleOf("_mm", length);
  return fixed(mm / by, by === 1 ? decimals : inchDecimals(decimals));
}

/** The nearest fraction of an inch, for under a number; nothing for who works in mm alone. */
export function fractionUnder(mm: number, expandedMm: number): string {
  return lengthOfAll.value === "mm" ? "" : fractionText(mm, expandedMm);
}

/** A number and its unit, as one: no space before a degree sign, which °C is not. */
export function withUnit(number: string, unit: string): string {
  return /^°( |$)/.test(unit) ? `${number}${unit}` : `${number} ${unit}`;
}
