import { Fold } from "../../controls/fold.tsx";
import type { ForecastResult } from "../../core/results.ts";
import { Assumed } from "../../result/notes.tsx";
import { OriginBadge, Source } from "../../result/origin.tsx";
import { showInterval, withUnit } from "../../result/quantity.ts";
import type { ShownProps } from "../../result/shows.ts";
import { settings } from "../../store/settings.ts";
import { COVERAGE } from "../../units/coverage.ts";
import { fixed } from "../../units/format.ts";
import { text as units } from "../../units/strings.ts";
import { text as together } from "../combined/meta.ts";
import { text } from "./meta.ts";
import { runningText } from "./words.ts";

const figures = (value: number | null) => Number((value ?? 0).toPrecision(2)).toString();
const percent = (share: number | null) => fixed(100 * (share ?? 0), 0);

/** What stands behind it: the wear before and after the readings, each reading, what was assumed. */
export function Details({ result, length }: ShownProps<ForecastResult>) {
  const { running } = settings.value;
  const done = result.run_in_share;
  return (
    <>
      <section class="panel">
        <h2>{text.wear}</h2>
        {result.at_running_h > 0 && (
          <p>{text.share(percent(done.median), percent(done.low_95), percent(done.high_95))}</p>
        )}
        {result.wear.map((one) => (
          <div key={one.parameter} class="happens">
            <h3>
              {one.label} <small>{one.unit}</small>
            </h3>
            <table>
              <tbody>
                <tr>
                  <th scope="row">{text.wearHead[1]}</th>
                  <td class="num">
                    {figures(one.prior.median)}
                    <br />
                    <small>95 %: {ends(one.prior.median, one.prior.log_sd)}</small>
                  </td>
                </tr>
                {result.readings_used > 0 && (
                  <tr>
                    <th scope="row">{text.wearHead[2]}</th>
                    <td class="num">
                      {figures(one.found.median)}
                      <br />
                      <small>
                        95 %: {text.to(figures(one.found.low_95), figures(one.found.high_95))}
                      </small>
                    </td>
                  </tr>
                )}
              </tbody>
            </table>
            <p class="small">
              {one.prior.text} <OriginBadge origin={one.prior.origin} />{" "}
              <Source source={one.prior.source} address={one.prior.address} />
            </p>
          </div>
        ))}
      </section>
      {result.points.length > 0 && (
        <Fold title={text.points}>
          <ul class="plain-list">
            {result.points.map((one) => {
              const at = one.movement_mm && showInterval("movement_mm", one.movement_mm, length);
              return (
                <li key={`${one.at_running_h} ${one.quantity} ${one.value}`}>
                  {runningText(one.at_running_h, result)} {running}:{" "}
                  {together.names[one.quantity as keyof typeof together.names]}{" "}
                  {at ? (
                    <span class="num">
                      {withUnit(at.value, at.unit)} [{units.range(at.low, at.high)}]
                    </span>
                  ) : (
                    text.unused
                  )}
                </li>
              );
            })}
          </ul>
        </Fold>
      )}
      <p class="small">{text.quality(fixed(result.quality.effective_share, 2))}</p>
      <Assumed result={result} />
    </>
  );
}

/** Ends of a lognormal 95 % interval. */
function ends(median: number, log_sd: number): string {
  const reach = Math.exp(COVERAGE * log_sd);
  return text.to(figures(median / reach), figures(median * reach));
}
