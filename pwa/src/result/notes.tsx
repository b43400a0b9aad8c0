import { Fold } from "../controls/fold.tsx";
import type { AnyResult, FitResult, Measured } from "../core/results.ts";
import { fixed, twoFigures } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { AssumedLines } from "./assumed.tsx";
import { Heads } from "./heads.tsx";
import { OriginBadge, originText } from "./origin.tsx";
import { scaleOf, show, withUnit } from "./quantity.ts";
import { text } from "./strings.ts";

/** What is worth knowing about this result, and what can hurt. */
export function Notes({ result }: { result: Pick<AnyResult, "warnings" | "cautions"> }) {
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
            <li key={one.code}>
              {one.text} <Founded on={one} />
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** What a caution with figures in it rests on; nothing where it claims no source. */
export function Founded({ on }: { on: { origin?: string; source?: string } }) {
  if (!on.source || !on.origin) return null;
  return (
    <>
      <OriginBadge origin={on.origin} /> <span class="small">{on.source}</span>
    </>
  );
}

/** A measured quantity of any kind, with its budget. */
type Budgeted = Omit<Measured, "quantity"> & { quantity: string };

/** Where the plus-or-minus comes from. */
export function Budget({ measured, length }: { measured: Budgeted; length: LengthUnit }) {
  return (
    <Fold title={text.budget}>
      <BudgetTable measured={measured} length={length} />
    </Fold>
  );
}

/** What was assumed, since nothing was given; and by what it was calculated. */
export function Assumed({ result }: { result: AnyResult | FitResult }) {
  const { assumptions } = result;
  return (
    <>
      {assumptions.length > 0 && (
        <Fold title={`${text.assumptions} (${assumptions.length})`}>
          <AssumedLines lines={assumptions} />
        </Fold>
      )}
      <p class="small">
        {text.version(result.core_version)} <a href="#/methods">{text.methods}</a>
      </p>
    </>
  );
}

function BudgetTable({ measured, length }: { measured: Budgeted; length: LengthUnit }) {
  const { quantity, value, expanded_uncertainty, coverage_factor, degrees_of_freedom } = measured;
  const whole = show(quantity, value, expanded_uncertainty, length);
  const { unit } = whole;
  return (
    <>
      <BudgetLines lines={measured.budget} quantity={quantity} length={length} />
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

interface LinesProps {
  lines: Measured["budget"];
  quantity: string;
  length: LengthUnit;
}

/** What is uncertain, and by how much, in the unit of the result. */
export function BudgetLines({ lines, quantity, length }: LinesProps) {
  const { by, unit } = scaleOf(quantity, length);
  return (
    <table class="budget">
      <Heads of={text.budgetHead} />
      <tbody>
        {lines.map((one) => (
          <tr key={one.name}>
            <th scope="row">{one.name}</th>
            <td>{one.kind}</td>
            <td class="num">{withUnit(twoFigures(one.standard_uncertainty / by), unit)}</td>
            <td class="num">{one.degrees_of_freedom ?? text.infinite}</td>
            <td class="small">{originText(one.origin)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
