/** How hot slack is shown. */
import { Fold } from "../../controls/fold.tsx";
import type { HeatResult } from "../../core/results.ts";
import { Assumed, BudgetLines, Notes } from "../../result/notes.tsx";
import { OriginBadge, Source } from "../../result/origin.tsx";
import { lengthTo, numberTo, withUnit } from "../../result/quantity.ts";
import { Rests } from "../../result/reasons.tsx";
import type { ShownProps, Shows } from "../../result/shows.ts";
import {
  EXCESS_DECIMALS,
  MOVEMENT_DECIMALS,
  slackGlance,
  tradeWindow,
  WINDOW_DECIMALS,
} from "../../result/slack-glance.ts";
import { text as shared } from "../../result/strings.ts";
import { toneOf } from "../../result/tone.tsx";
import { fixed, trimmed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { text as units } from "../../units/strings.ts";
import { HeatChart } from "./heat-chart.tsx";
import { text } from "./meta.ts";
import { TwoStates } from "./two-states.tsx";
import { heatWords as words } from "./words.ts";

type Props = ShownProps<HeatResult>;

function Reasons({ result, input, length }: Props) {
  const { cold, hot, cold_target: target, interference } = result;
  const excess = (mm: number) => lengthTo(mm, length, EXCESS_DECIMALS);
  const hotWindow = range(target.hot_lower_mm, target.hot_upper_mm, length, WINDOW_DECIMALS);
  return (
    <>
      <section class="panel reasons">
        <p class="next">
          <strong>{shared.next}</strong>{" "}
          {target.cold_upper_mm === null
            ? words.hopeless(hotWindow)
            : words.aim(
                range(target.cold_lower_mm ?? 0, target.cold_upper_mm, length, MOVEMENT_DECIMALS),
                hotWindow,
              )}{" "}
          <OriginBadge origin={target.origin} />
        </p>
        <p>
          <strong>{shared.why}</strong>{" "}
          {words.change(
            excess(cold.excess_mm),
            excess(hot.excess_mm),
            signed(excess(hot.excess_mm - cold.excess_mm)),
          )}
        </p>
        <p>{sureOf(result, length)}</p>
        {tradeWindow && <Rests limit={tradeWindow} />}
      </section>
      {interference && <Pulls {...{ result, input, length }} pull={interference} />}
      <Notes result={result} />
    </>
  );
}

/** What its 95 % interval says of the hot slack. */
function sureOf({ hot_interval: at, hot_verdict: verdict }: HeatResult, length: LengthUnit) {
  // A reading saved before hot slack had an interval has none; one too close is told of below.
  if (!at || verdict.outcome === "too-close") return "";
  const { movement_mm: moves, excess_mm: excess } = at;
  if (verdict.slack === "none") {
    return words.surelyShort(range(-excess.high, -excess.low, length, EXCESS_DECIMALS));
  }
  const moved = range(moves.low, moves.high, length, MOVEMENT_DECIMALS);
  return words.interval(moved, verdict.slack === "some");
}

function range(from: number, to: number, length: LengthUnit, decimals: number): string {
  return units.range(numberTo(from, length, decimals), lengthTo(to, length, decimals));
}

const signed = (words: string) => (words.startsWith("−") ? words : `+${words}`);

function newtons(low: number, high: number): string {
  return low === high ? `${fixed(low, 0)} N` : `${units.range(fixed(low, 0), fixed(high, 0))} N`;
}

interface PullProps extends Props {
  pull: NonNullable<HeatResult["interference"]>;
}

/** What a chain that is too short when hot does, over the whole range of stiffness. */
function Pulls({ result, input, length, pull }: PullProps) {
  const assumed = result.assumptions.find((one) => one.field === "stiffness_n_per_mm");
  const give = "compliance_um_per_kn" in input ? input.compliance_um_per_kn : undefined;
  const given = "stiffness_n_per_mm" in input ? input.stiffness_n_per_mm : undefined;
  return (
    <section class="panel pulls">
      <h2>{words.pulls}</h2>
      <table>
        <tbody>
          <tr>
            <th scope="row">{words.pullRows.interference}</th>
            <td class="num">{lengthTo(pull.interference_mm, length, EXCESS_DECIMALS)}</td>
          </tr>
          <tr>
            <th scope="row">{words.pullRows.tension}</th>
            <td class="num">{newtons(pull.tension_low_n, pull.tension_high_n)}</td>
          </tr>
          <tr>
            <th scope="row">{words.pullRows.load}</th>
            <td class="num">{newtons(pull.shaft_load_low_n, pull.shaft_load_high_n)}</td>
          </tr>
        </tbody>
      </table>
      <p class="small">
        {assumed ? (
          <>
            {assumed.text} <OriginBadge origin={assumed.origin} />
          </>
        ) : (
          typeof given === "number" && (
            <>
              {words.pullRows.stiffness}: {trimmed(given, 1)} N/mm{" "}
              <OriginBadge origin={pull.origin} /> {pull.source}
            </>
          )
        )}{" "}
        {typeof give === "number" && `${words.pullRows.give}: ${trimmed(give, 1)} µm/kN.`}{" "}
        {words.pullsNote}
      </p>
    </section>
  );
}

function Details({ result, length }: Props) {
  return (
    <>
      <TwoStates
        title={words.both}
        heads={[words.cold, words.hot]}
        before={result.cold}
        after={result.hot}
        length={length}
      />
      <section class="panel">
        <h2>{words.materials}</h2>
        <ul class="plain-list">
          {result.materials.map((one) => (
            <li key={one.part}>
              <strong>{words.parts[one.part]}</strong>: {one.label},{" "}
              <span class="num">
                {trimmed(one.expansion_ppm, 2)} {text.perKelvin}
              </span>{" "}
              <OriginBadge origin={one.origin} />{" "}
              {one.error_origin && (
                <>
                  <span class="num">± {trimmed(one.expansion_error_ppm, 2)}</span>{" "}
                  <OriginBadge origin={one.error_origin} />{" "}
                </>
              )}
              <span class="small">
                <Source source={one.source} address={one.address} />
              </span>
            </li>
          ))}
        </ul>
      </section>
      {result.budget && (
        <Fold title={words.budget}>
          <BudgetLines lines={result.budget} quantity="excess_mm" length={length} />
        </Fold>
      )}
      <Assumed result={result} />
    </>
  );
}

export const heatShown: Shows<HeatResult> = {
  glance: ({ hot, hot_interval, cold, interference: pull, warnings }, length) => {
    const underShort = pull ? words.pull(newtons(pull.tension_low_n, pull.tension_high_n)) : "";
    const seen = slackGlance(hot, cold, length, {
      ...words,
      underShort,
      figure: "hot_movement_mm",
    });
    if (hot_interval && seen.scale) {
      const { low, high } = hot_interval.movement_mm;
      seen.scale = { ...seen.scale, low, high };
      if (hot.excess_mm >= 0) {
        const ends = units.range(
          numberTo(low, length, MOVEMENT_DECIMALS),
          numberTo(high, length, MOVEMENT_DECIMALS),
        );
        seen.under = `${withUnit(ends, length)}, 95 %`;
      }
    }
    if (!warnings.some((one) => one.code === "hot-too-close")) return seen;
    const outcome = "too-close";
    return {
      ...seen,
      tone: toneOf(outcome),
      outcome,
      word: words.wordDoubt,
      headline: words.doubt,
    };
  },
  Reasons,
  Pictures: HeatChart,
  Details,
};
