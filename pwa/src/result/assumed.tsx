import type { Assumption } from "../core/results.ts";
import { labelOf } from "../core/terms.ts";
import { distanceUnit, settings, unitOf } from "../store/settings.ts";
import { roundDistance } from "../units/distance.ts";
import { roundLength, trimmed } from "../units/format.ts";
import { distanceOf, speedText } from "../units/running.ts";
import { differenceText, temperatureText } from "../units/temperature.ts";
import { OriginBadge } from "./origin.tsx";
import { withUnit } from "./quantity.ts";
import { text } from "./strings.ts";

/** Units of the core that are written otherwise on a screen. */
const WRITTEN: Record<string, string> = {
  deg: "°",
  percent: "%",
  kPa: text.absolute,
  "1e-6/K": "10⁻⁶/K",
};

/** Figures worth reading of a number that nobody measured. */
const DECIMALS = 4;

function amountText({ field, value, unit }: Assumption): string {
  if (unit === "degC") {
    return `${labelOf(field)} ${temperatureText(value, settings.value.temperature)}`;
  }
  if (unit === "K") return differenceText(value, settings.value.temperature);
  if (unit === "mm") return roundLength(value, unitOf(field));
  if (unit === "mm/deg") return `${roundLength(value, unitOf("checking_height_mm"))}/°`;
  if (unit === "km") return roundDistance(value, distanceOf(settings.value.running));
  if (unit === "km/h") return speedText(value, distanceUnit());
  return withUnit(trimmed(value, DECIMALS), WRITTEN[unit] ?? unit);
}

/** What was assumed, since nothing was given: what, how much, and where that is from. */
export function AssumedLines({ lines }: { lines: readonly Assumption[] }) {
  return (
    <ul class="plain-list">
      {lines.map((one) => (
        <li key={one.field}>
          {one.text} {amountText(one)} <OriginBadge origin={one.origin} />
        </li>
      ))}
    </ul>
  );
}
