import type { BenchResult, GearResult, Judgement } from "../core/results.ts";
import { trimmed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { OriginBadge, Source } from "./origin.tsx";
import { scaleOf, withUnit } from "./quantity.ts";
import { text } from "./strings.ts";
import { ToneShape, toneOf } from "./tone.tsx";

/** Every limit that applies, with what it says here; those that disagree are seen to. */
export function Limits({
  result,
  length,
}: {
  result: BenchResult | GearResult;
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
  const { limit, outcome, limit_value, unit } = judgement;
  const { by, unit: shownUnit } = scaleOf(unit === "%" ? "_percent" : `_${unit}`, length);
  return (
    <li class={rules ? "limit limit-rules" : "limit"}>
      <ToneShape tone={toneOf(outcome)} />
      <div>
        <p class="limit-head">
          <strong>{limit.label}</strong>
          <span class="limit-outcome">
            {text.outcomes[outcome]} {withUnit(trimmed(limit_value / by, 3), shownUnit)}
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
