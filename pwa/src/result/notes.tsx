import { Fold } from "../controls/fold.tsx";
import type { BenchResult, Measured } from "../core/results.ts";
import { fixed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { OriginBadge } from "./origin.tsx";
import { scaleOf, show, withUnit } from "./quantity.ts";
import { text } from "./strings.ts";

/** What is worth knowing about this result, and what can hurt. */
export function Notes({ result }: { result: BenchResult }) {
  return (
    <>
      {result.warnings.length > 0 && (
        <section class="panel warnings">
          <h2>{text.warnings}</h2>
          <ul>
            {result.warnings.map((one) => (
              <li key={one.code}>
                {one.text} {one.origin && <OriginBadge origin={one.origin} />}{" "}
                {one.source && <span class="small">{one.source}</span>}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section class="panel cautions">
        <h2>{text.cautions}</h2>
        <ul>
          {result.cautions.map((one) => (
            <li key={one.code}>{one.text}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** Where the plus-or-minus comes from, and what was assumed for it. */
export function Budget({ result, length }: { result: BenchResult; length: LengthUnit }) {
  const { measured, assumptions } = result;
  return (
    <>
      <Fold title={text.budget}>
        <BudgetTable measured={measured} length={length} />
      </Fold>
      {assumptions.length > 0 && (
        <Fold title={`${text.assumptions} (${assumptions.length})`}>
          <ul class="plain-list">
            {assumptions.map((one) => (
              <li key={one.field}>
                {one.text} {withUnit(String(one.value), one.unit === "deg" ? "°" : one.unit)}{" "}
                <OriginBadge origin={one.origin} />
              </li>
            ))}
          </ul>
        </Fold>
      )}
      <p class="small">{text.version(result.core_version)}</p>
    </>
  );
}

function BudgetTable({ measured, length }: { measured: Measured; length: LengthUnit }) {
  const { quantity, value, expanded_uncertainty, coverage_factor, degrees_of_freedom } = measured;
  const { by, unit } = scaleOf(quantity, length);
  const whole = show(quantity, value, expanded_uncertainty, length);
  return (
    <>
      <table class="budget">
        <thead>
          <tr>
            {text.budgetHead.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {measured.budget.map((one) => (
            <tr key={one.name}>
              <th scope="row">{one.name}</th>
              <td>{one.kind}</td>
              <td class="num">{withUnit((one.standard_uncertainty / by).toPrecision(2), unit)}</td>
              <td class="num">{one.degrees_of_freedom ?? text.infinite}</td>
              <td class="small">{text.origins[one.origin] ?? one.origin}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">
        {text.budgetSum(
          fixed(coverage_factor, 2),
          String(degrees_of_freedom ?? text.infinite),
          withUnit(whole.plusMinus, unit),
        )}
      </p>
    </>
  );
}
