/** How several readings in one are shown. */
import type { CombinedResult } from "../../core/results.ts";
import { labelOf, limits } from "../../core/terms.ts";
import type { Glance } from "../../result/glance.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { fractionUnder, lengthTo, show } from "../../result/quantity.ts";
import type { ShownProps, Shows } from "../../result/shows.ts";
import { EXCESS_DECIMALS } from "../../result/slack-glance.ts";
import { StateTable } from "../../result/state-table.tsx";
import { text as shared } from "../../result/strings.ts";
import { windowZones } from "../../result/zones.ts";
import { trimmed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { Forest } from "./forest.tsx";
import { text } from "./meta.ts";
import { partText, spanOf, usedCount } from "./parts.ts";

type Outcome = keyof typeof text.words;

function outcomeOf({ consistency }: CombinedResult): Outcome {
  if (consistency.probability === null) return "single";
  return consistency.consistent ? "consistent" : "inconsistent";
}

function headline(result: CombinedResult): string {
  const outcome = outcomeOf(result);
  if (outcome === "single") return text.single;
  if (outcome === "consistent") return text.agree(usedCount(result));
  const odd = result.odd_one_out;
  return odd ? text.oddIs(text.names[odd.quantity]) : text.disagree;
}

function glance(result: CombinedResult, length: LengthUnit): Glance {
  const at = result.state.movement_mm;
  const shown = show("movement_mm", at.value, (at.high - at.low) / 2, length);
  const outcome = outcomeOf(result);
  const said = {
    outcome,
    word: text.words[outcome],
    headline: headline(result),
    limit: null,
  };
  if (outcome === "inconsistent") {
    const { quantity, number, unit } = spanOf(result, length);
    return {
      ...said,
      figure: quantity,
      what: text.span(labelOf(quantity)),
      number,
      unit,
      side: "",
      under: "",
      tone: "caution",
      scale: null,
    };
  }
  return {
    ...said,
    figure: "combined",
    what: text.what(usedCount(result)),
    number: shown.value,
    unit: shown.unit,
    side: `± ${shown.plusMinus}`,
    under: fractionUnder(at.value, (at.high - at.low) / 2),
    tone: outcome === "consistent" ? "good" : "open",
    scale: { quantity: "movement_mm", ...at, zones: windowZones(limits) },
  };
}

function Reasons({ result, length }: ShownProps<CombinedResult>) {
  const { consistency, odd_one_out: odd, parts } = result;
  const chance = consistency.probability;
  const part = odd ? parts[odd.index] : undefined;
  return (
    <>
      <section class="panel reasons">
        <p class="next">
          <strong>{shared.next}</strong> {nextStep(result, length)}
        </p>
        {chance !== null && (
          <p>
            <strong>{shared.why}</strong> {text.chance(chanceText(chance))} {text.chanceLimit}
          </p>
        )}
        {parts.some((one) => !one.used) && <p>{text.unusedWhy}</p>}
        {odd && part && (
          <>
            <p>
              {text.expected(
                lengthTo(odd.expected_excess_mm, length, EXCESS_DECIMALS),
                lengthTo(part.excess_mm, length, EXCESS_DECIMALS),
              )}
            </p>
            <p>
              <strong>{text.causes}</strong> <OriginBadge origin={odd.origin} />
            </p>
            <ul class="causes">
              {odd.causes.map((one) => (
                <li key={one.code}>{one.text}</li>
              ))}
            </ul>
          </>
        )}
      </section>
      <Notes result={result} />
    </>
  );
}

function nextStep(result: CombinedResult, length: LengthUnit): string {
  const outcome = outcomeOf(result);
  if (outcome === "single") return text.next.single;
  if (outcome === "consistent") return text.next.agree;
  const odd = result.odd_one_out;
  if (!odd) return text.next.two;
  return text.next.odd(text.names[odd.quantity], partText(odd, length));
}

function chanceText(chance: number): string {
  return chance < 0.001 ? text.below : `${trimmed(100 * chance, chance < 0.1 ? 1 : 0)} %`;
}

function Details({ result, length }: ShownProps<CombinedResult>) {
  return (
    <>
      {outcomeOf(result) === "inconsistent" && (
        <p class="panel">
          {text.together}: {text.unusable}
        </p>
      )}
      <StateTable state={result.state} length={length} />
      <Assumed result={result} />
    </>
  );
}

export const combinedShown: Shows<CombinedResult> = { glance, Reasons, Pictures: Forest, Details };
