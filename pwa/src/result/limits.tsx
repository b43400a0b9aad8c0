import type { BenchResult, ClearanceResult, GearResult, Judgement } from "../core/results.ts";
import { trimmed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { text as units } from "../units/strings.ts";
import { OriginBadge, Source } from "./origin.tsx";
import { scaleOf, showInterval, withUnit } from "./quantity.ts";
import { text } from "./strings.ts";
import { ToneShape, toneOf } from "./tone.tsx";

/** Every limit that applies, with what it says here; those that disagree are seen to. */
export function Limits({
  result,
  length,
}: {
  result: BenchResult | GearResult | ClearanceResult;
  length: LengthUnit;
}) {
  if (result.judgements.length === 0) return null;
  return (
    <section class="panel">
      <h2>{text.limits}</h2>
      <p class="small">{text.limitsNote}</p>
      <ul class="limits">
        {result.judgements.map((one) => (
          <Row
            key={one.limit.id}
            judgement={one}
            rules={one.limit.id === result.verdict.limit?.id}
            length={length}
          />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  judgement: Judgement;
  rules: boolean;
  length: LengthUnit;
}

function Row({ judgement, rules, length }: RowProps) {
  const { limit, outcome, limit_value, unit, value, low, high } = judgement;
  const name = unit === "%" ? "_percent" : `_${unit}`;
  const { by, unit: shownUnit } = scaleOf(name, length);
  return (
    <li class={rules ? "limit limit-rules" : "limit"}>
      <ToneShape tone={toneOf(outcome)} />
      <div>
        <p class="limit-head">
          <strong>{limit.label}</strong>
          <span class="limit-outcome">
            {text.outcomes[outcome]} {withUnit(trimmed(limit_value / by, 3), shownUnit)}
            {/* A reading saved before its limits held its own figure has none. */}
            {value !== undefined && (
              <span class="limit-yours">
                {text.yours(yours({ value, low, high }, name, length))}
              </span>
            )}
          </span>
        </p>
        <p class="small">
          <OriginBadge origin={limit.origin} />{" "}
          <Source source={limit.source} address={limit.address} /> {limit.note}
        </p>
      </div>
    </li>
  );
}

/** The user's own figure in the unit of the limit, with its 95 % interval. */
function yours(
  at: { value: number; low: number; high: number },
  name: string,
  length: LengthUnit,
): string {
  const { value, low, high, unit } = showInterval(name, at, length);
  return `${withUnit(value, unit)} (${units.range(low, high)})`;
}
