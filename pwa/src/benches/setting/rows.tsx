import { labelOf } from "../../core/terms.ts";
import { type At, IntervalCell } from "../../result/angles.tsx";
import { FigureName } from "../../result/figure-name.tsx";

/** One figure with its interval, as a row of a table. */
export function IntervalRow({
  label,
  at,
  figure = "",
}: {
  label: string;
  at: At | null;
  figure?: string;
}) {
  if (!at) return null;
  return (
    <tr>
      <th scope="row">
        <FigureName figure={figure}>{label}</FigureName>
      </th>
      <IntervalCell at={at} quantity="_deg" length="mm" />
    </tr>
  );
}

/** The order in which the trade goes through them: the core's answer has none. */
export const FIGURES = [
  "intake_opening_btdc_deg",
  "intake_closing_abdc_deg",
  "intake_duration_deg",
  "intake_centreline_deg",
  "exhaust_opening_bbdc_deg",
  "exhaust_closing_atdc_deg",
  "exhaust_duration_deg",
  "exhaust_centreline_deg",
  "lobe_separation_cam_deg",
  "advance_deg",
  "overlap_deg",
] as const;

/** Every figure that there is. */
export function IntervalTable({ figures }: { figures: Record<string, At | null> }) {
  return (
    <table class="state-table">
      <tbody>
        {FIGURES.map((name) => (
          <IntervalRow key={name} figure={name} label={labelOf(name)} at={figures[name] ?? null} />
        ))}
      </tbody>
    </table>
  );
}
