import { labelOf } from "../../core/terms.ts";
import { showInterval, withUnit } from "../../result/quantity.ts";

interface At {
  value: number;
  low: number;
  high: number;
}

/** One figure with its interval, as a row of a table. */
export function IntervalRow({ label, at }: { label: string; at: At | null }) {
  if (!at) return null;
  const shown = showInterval("_deg", at, "mm");
  return (
    <tr>
      <th scope="row">{label}</th>
      <td class="num">
        <strong>{withUnit(shown.value, "°")}</strong>
        <span class="interval-text">
          [{shown.low} to {shown.high}]
        </span>
      </td>
    </tr>
  );
}

/** Every figure that there is, by the core's names, in its order. */
export function IntervalTable({ figures }: { figures: Record<string, At | null> }) {
  return (
    <table class="state-table">
      <tbody>
        {Object.entries(figures).map(([name, at]) => (
          <IntervalRow key={name} label={labelOf(name)} at={at} />
        ))}
      </tbody>
    </table>
  );
}
