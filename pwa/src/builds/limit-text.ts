import type { Limit } from "../core/results.ts";
import { scaleOf, withUnit } from "../result/quantity.ts";
import { trimmed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { text } from "./sheet-strings.ts";

/** What a limit allows, in the unit of the sheet. */
export function limitText(limit: Limit, length: LengthUnit): string {
  const share = limit.unit.startsWith("%");
  const { by, unit } = share ? { by: 1, unit: limit.unit } : scaleOf(`_${limit.unit}`, length);
  const written = (value: number) => withUnit(trimmed(value / by, by === 1 ? 3 : 4), unit);
  const { lower, upper, upper_to } = limit;
  if (lower !== null && upper !== null) return text.between(written(lower), written(upper));
  if (upper !== null && upper_to !== null) {
    return text.upTo(text.between(written(upper), written(upper_to)));
  }
  if (upper !== null) return text.upTo(written(upper));
  return lower === null ? text.noLimit : text.from(written(lower));
}
