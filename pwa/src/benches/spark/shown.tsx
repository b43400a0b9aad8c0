/** How the spark's scatter is shown. */
import "../../styles/prove.css";
import type { ComponentChildren } from "preact";
import type { SparkResult } from "../../core/results.ts";
import type { Glance } from "../../result/glance.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import type { Tone } from "../../result/tone.tsx";
import { settings } from "../../store/settings.ts";
import { decimalsFor, fixed, trimmed } from "../../units/format.ts";
import { POWER_SIGNS, powerIn } from "../../units/power.ts";
import { text as units } from "../../units/strings.ts";
import { LISTS, text } from "./meta.ts";

type Spread = SparkResult["spreads"][number];
type Range = { low: number; high: number };

const TONES: Record<SparkResult["changes"][number]["outcome"], Tone> = {
  narrower: "good",
  wider: "bad",
  "not-shown": "open",
};

function glance(result: SparkResult): Glance {
  const { spreads, changes } = result;
  const change = changes.at(-1);
  const spread = spreads.findLast((one) => !change || one.at === change.at) ?? spreads[0];
  const headline = change ? text.outcomes[change.outcome] : text.only;
  return {
    figure: "range_deg",
    what: spread ? text.what(text.where(spread.at, spread.when)) : "",
    number: spread ? trimmed(spread.range_deg, 2) : shared.nothing,
    unit: "°",
    side: spread ? text.deviation(trimmed(spread.deviation_deg.value, 2)) : "",
    under: "",
    tone: change ? TONES[change.outcome] : "open",
    outcome: change?.outcome ?? "read",
    word: text.words[change?.outcome ?? "only"],
    headline,
    scale: null,
    limit: null,
  };
}

/** Both ends to the decimals that the range is worth. */
function between({ low, high }: Range, by = 1): string {
  const decimals = decimalsFor((high - low) / 2 / by || high / by);
  return units.range(fixed(low / by, decimals), fixed(high / by, decimals));
}

function costs(percent: Range, kw: Range | null): string {
  const unit = settings.value.power;
  const power = kw && `, ${between(kw, 1 / powerIn(1, unit))} ${POWER_SIGNS[unit]}`;
  return `${between(percent)} %${power ?? ""}`;
}

function Reasons({ result }: ShownProps<SparkResult>) {
  const { right_range_deg, right_range_origin, loss_per_deg2: law } = result;
  return (
    <>
      <section class="panel reasons">
        {result.said.map((one) => (
          <p key={one}>{one}</p>
        ))}
        <p>
          <strong>{text.trade}:</strong> {trimmed(right_range_deg, 1)}°{" "}
          <OriginBadge origin={right_range_origin} />
        </p>
        <p>
          <strong>{text.law}:</strong> {law.text} <OriginBadge origin={law.origin} />
        </p>
      </section>
      <Notes result={result} />
    </>
  );
}

/** Every reading as a dot on one scale: what is wide shows as wide. */
function Pictures({ result, input }: PicturesProps<SparkResult>) {
  if (!result || !input) return null;
  const lists = result.spreads.map((spread) => ({
    spread,
    values: ((input as Record<string, unknown>)[LISTS[spread.at][spread.when]] ?? []) as number[],
  }));
  const all = lists.flatMap((one) => one.values);
  const from = Math.floor(Math.min(...all) - 0.5);
  const to = Math.ceil(Math.max(...all) + 0.5);
  const x = (deg: number) => 12 + ((deg - from) / (to - from)) * 336;
  const step = to - from > 12 ? 5 : to - from > 6 ? 2 : 1;
  const marks = Array.from({ length: to - from + 1 }, (_, i) => from + i).filter(
    (deg) => deg % step === 0,
  );
  const bottom = 10 + lists.length * 46;
  return (
    <figure class="panel drawing spark-picture">
      <figcaption>{text.picture}</figcaption>
      <svg
        viewBox={`0 0 360 ${bottom + 26}`}
        role="img"
        aria-label={lists
          .map(({ spread, values }) =>
            text.pictureOf(
              text.where(spread.at, spread.when),
              trimmed(Math.min(...values), 2),
              trimmed(Math.max(...values), 2),
            ),
          )
          .join(" ")}
      >
        {marks.map((deg) => (
          <g key={deg}>
            <path class="spark-mark" d={`M${x(deg)} 8V${bottom}`} />
            <text x={x(deg)} y={bottom + 18}>
              {deg}°
            </text>
          </g>
        ))}
        {lists.map(({ spread, values }, row) => {
          const y = 38 + row * 46;
          const seen = new Map<number, number>();
          return (
            <g key={`${spread.at} ${spread.when}`}>
              <text class="spark-name" x={12} y={y - 16}>
                {text.where(spread.at, spread.when)}
              </text>
              <path
                class="spark-range"
                d={`M${x(Math.min(...values))} ${y}H${x(Math.max(...values))}`}
              />
              {values.map((value, i) => {
                const above = seen.get(value) ?? 0;
                seen.set(value, above + 1);
                return (
                  <circle
                    key={i}
                    class={`spark-dot spark-${spread.when}`}
                    cx={x(value)}
                    cy={y - 3 * above}
                    r={4.5}
                  />
                );
              })}
            </g>
          );
        })}
      </svg>
    </figure>
  );
}

function Details({ result }: ShownProps<SparkResult>) {
  return (
    <>
      {result.changes.map((one) => (
        <section class="panel" key={one.at}>
          <h2>
            {text.changed}: {text.places[one.at]}
          </h2>
          <table class="state-table">
            <tbody>
              <Row
                label={text.ratio}
                value={
                  one.ratio_of_deviations ? trimmed(one.ratio_of_deviations.value, 2) : text.noRatio
                }
              >
                {one.ratio_of_deviations && `[${between(one.ratio_of_deviations)}]`}
              </Row>
              <Row label={text.mean} value={`${signed(one.mean_change_deg)}°`} />
              <Row
                label={text.gained}
                value={costs(one.scatter_gain_percent, one.scatter_gain_kw)}
              />
            </tbody>
          </table>
        </section>
      ))}
      {result.spreads.map((one) => (
        <SpreadTable key={`${one.at} ${one.when}`} spread={one} />
      ))}
      <p class="small">{shared.brackets}</p>
      <Assumed result={result} />
    </>
  );
}

const signed = (value: number) => `${value > 0 ? "+" : ""}${trimmed(value, 2)}`;

function SpreadTable({ spread }: { spread: Spread }) {
  const { rows } = text;
  const { deviation_deg: s, own_deviation_deg: own, resolution_share: share } = spread;
  return (
    <section class="panel">
      <h2>{text.where(spread.at, spread.when)}</h2>
      <table class="state-table">
        <tbody>
          <Row label={rows.range} value={`${trimmed(spread.range_deg, 2)}°`} />
          <Row label={rows.mean} value={`${trimmed(spread.mean_deg, 2)}°`} />
          <Row label={rows.deviation} value={`${trimmed(s.value, 2)}°`}>
            [{between(s)}]
          </Row>
          <Row label={rows.own} value={`${trimmed(own.value, 2)}°`}>
            [{between(own)}]
          </Row>
          {share !== null && <Row label={rows.share} value={`${fixed(share * 100, 0)} %`} />}
          <Row
            label={rows.loss}
            value={costs(spread.scatter_loss_percent, spread.scatter_loss_kw)}
          />
          {spread.setting_loss_percent.high > 0 && (
            <Row label={rows.setting} value={`${between(spread.setting_loss_percent)} %`} />
          )}
        </tbody>
      </table>
    </section>
  );
}

interface RowProps {
  label: string;
  value: string;
  children?: ComponentChildren;
}

function Row({ label, value, children }: RowProps) {
  return (
    <tr>
      <th scope="row">{label}</th>
      <td class="num">
        <strong>{value}</strong>
        {children && <span class="interval-text">{children}</span>}
      </td>
    </tr>
  );
}

export const sparkShown: Shows<SparkResult> = { glance, Reasons, Pictures, Details };
