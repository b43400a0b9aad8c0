/**
 * Chain sizes to pick a pitch and roller diameter from [mm].
 *
 * Source: ISO 606:1994, as printed in GOST 13568-97 and chain catalogues; the C sizes are bush
 * chains, their figure is the bush. Published.
 */
import { unitOf } from "../store/settings.ts";
import { trimmed } from "../units/format.ts";
import { MM_PER_INCH } from "../units/parse.ts";
import { text } from "./strings.ts";

interface ChainSize {
  id: string;
  pitch: number;
  roller: number;
}

const ROWS: [id: string, pitch: number, roller: number][] = [
  ["04C", 6.35, 3.3],
  ["06C", 9.525, 5.08],
  ["05B", 8, 5],
  ["06B", 9.525, 6.35],
  ["08A", 12.7, 7.95],
  ["08B", 12.7, 8.51],
  ["10A", 15.875, 10.16],
  ["10B", 15.875, 10.16],
  ["12A", 19.05, 11.91],
  ["12B", 19.05, 12.07],
];

export const chainSizes: ChainSize[] = ROWS.map(([id, pitch, roller]) => ({ id, pitch, roller }));

/** The sizes to pick from, in the unit of a field. */
export function sizesIn(field: string): { id: string; label: string }[] {
  const length = (mm: number) =>
    unitOf(field) === "in" ? `${trimmed(mm / MM_PER_INCH, 3)} in` : `${mm} mm`;
  return chainSizes.map(({ id, pitch, roller }) => ({
    id,
    label: text.sizeOf(id, length(pitch), id.endsWith("C") ? "bush" : "roller", length(roller)),
  }));
}
