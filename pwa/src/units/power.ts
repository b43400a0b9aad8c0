/** Power and torque as typed and as shown. */
import { trimmed } from "./format.ts";
import { parseNumber, type ReadNumber, type Wrong } from "./parse.ts";
import { text as words } from "./strings.ts";

export type PowerUnit = "hp" | "kW" | "PS";
export type TorqueUnit = "Nm" | "lbfft";

// Exact by definition: 550 ft lbf/s, 75 kgf m/s and 1 ft lbf, by the pound of 0.45359237 kg, the foot
// of 0.3048 m and the standard fall of 9.80665 m/s2.
const NM_PER_LBF_FT = 0.45359237 * 9.80665 * 0.3048;
const KW: Record<PowerUnit, number> = {
  hp: (550 * NM_PER_LBF_FT) / 1000,
  kW: 1,
  PS: (75 * 9.80665) / 1000,
};
const NM: Record<TorqueUnit, number> = { Nm: 1, lbfft: NM_PER_LBF_FT };

export const POWER_SIGNS: Record<PowerUnit, string> = { hp: "hp", kW: "kW", PS: "PS" };
export const TORQUE_SIGNS: Record<TorqueUnit, string> = { Nm: "N m", lbfft: "lbf ft" };

/** A power [kW] in a unit. */
export const powerIn = (kw: number, unit: PowerUnit): number => kw / KW[unit];

/** A torque [N m] in a unit. */
export const torqueIn = (nm: number, unit: TorqueUnit): number => nm / NM[unit];

/** Reads a power to [kW]: 485, 361.7 kW, 490 PS; a unit typed along wins over `unit`. */
export function parsePower(text: string, unit: PowerUnit): ReadNumber | Wrong {
  const parts = /^(.*?) ?(b?hp|kw|ps)?$/i.exec(text.trim());
  const said = parts?.[2]?.toLowerCase();
  const used = said === undefined ? unit : said === "kw" ? "kW" : said === "ps" ? "PS" : "hp";
  const read = parseNumber(parts?.[1] ?? text);
  if (!read.ok) return { ...read, got: text.trim(), need: words.power(unit) };
  return { ok: true, value: read.value * KW[used] };
}

/** Reads a torque to [N m]: 400, 400 Nm, 400 N·m, 295 lbf ft, 295 lb-ft; a unit typed along wins. */
export function parseTorque(text: string, unit: TorqueUnit): ReadNumber | Wrong {
  const parts = /^(.*?) ?(n ?[·.]? ?m|(?:lbf?[ .·-]?ft|ft[ .·-]?lbf?)s?)?$/i.exec(text.trim());
  const said = parts?.[2]?.toLowerCase();
  const used = said === undefined ? unit : said.startsWith("n") ? "Nm" : "lbfft";
  const read = parseNumber(parts?.[1] ?? text);
  if (!read.ok) {
    return { ...read, got: text.trim(), need: words.torque(TORQUE_SIGNS[unit]) };
  }
  return { ok: true, value: read.value * NM[used] };
}

/** A power [kW] with its unit, to a tenth unless said otherwise. */
export function powerText(kw: number, unit: PowerUnit, decimals = 1): string {
  return `${trimmed(powerIn(kw, unit), decimals)} ${POWER_SIGNS[unit]}`;
}

/** A torque [N m] with its unit, to a tenth unless said otherwise. */
export function torqueText(nm: number, unit: TorqueUnit, decimals = 1): string {
  return `${trimmed(torqueIn(nm, unit), decimals)} ${TORQUE_SIGNS[unit]}`;
}
