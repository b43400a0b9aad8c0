/** Verdict, gain on a scale, strip of runs, and tables: of the screen and of the page to print. */

import type { CompareResult } from "../core/results.ts";
import { Heads } from "../result/heads.tsx";
import { settings } from "../store/settings.ts";
import { fixed } from "../units/format.ts";
import { powerText, torqueText } from "../units/power.ts";
import { text } from "./strings.ts";

type Difference = CompareResult["differences"][number];

/** A figure of the core in the unit of the user. */
export function figureText(value: number, unit: CompareResult["unit"]): string {
  return unit === "kW"
    ? powerText(value, settings.value.power)
    : torqueText(value, settings.value.torque);
}

export function Verdicts({ result }: { result: CompareResult }) {
  return (
    <>
      {result.differences.map((one) => (
        <section key={one.to_setting} class="panel compare-verdict" data-outcome={one.outcome}>
          <h2 class="compare-headline" data-testid={`verdict-${one.to_setting}`}>
            {one.to_setting}: {one.headline}
          </h2>
          <GainScale one={one} />
          <p>{one.why}</p>
          <p>
            <strong>{text.next}</strong> {one.next_step}
          </p>
        </section>
      ))}
    </>
  );
}

/** The gain with its interval on a line, zero marked. */
export function GainScale({ one }: { one: Difference }) {
  const { value, lower_95: low, upper_95: high } = one.gain_percent;
  if (low === null || high === null) return null;
  const reach = 1.15 * Math.max(Math.abs(low), Math.abs(high), 0.1);
  const x = (gain: number) => 160 + (150 * gain) / reach;
  return (
    <svg
      class="gain-scale"
      viewBox="0 0 320 62"
      role="img"
      aria-label={text.scale(fixed(low, 2), fixed(value, 2), fixed(high, 2))}
    >
      <path class="gain-axis" d="M5 30H315" />
      <path class="gain-zero" d="M160 10V42" />
      <path class="gain-interval" d={`M${x(low)} 30H${x(high)}`} />
      <circle class="gain-value" cx={x(value)} cy="30" r="6" />
      <text x="160" y="57" text-anchor="middle">
        0 %
      </text>
      <text x="315" y="57" text-anchor="end">
        +{fixed(reach, 1)} %
      </text>
      <text x="5" y="57">
        −{fixed(reach, 1)} %
      </text>
    </svg>
  );
}

/** Every run as a point over its setting. */
export function Strip({ result }: { result: CompareResult }) {
  const shown = result.runs.filter((run) => run.without_drift !== null);
  const values = shown.map((run) => run.without_drift ?? 0);
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  const y = (value: number) => 20 + 44 * 3 * (1 - (value - low) / span);
  const keys = result.settings.map((one) => one.setting);
  const width = 250 / keys.length;
  const middle = (key: string) => 60 + width * (keys.indexOf(key) + 0.5);
  return (
    <figure class="panel chart">
      <figcaption>{text.strip}</figcaption>
      <svg class="strip" viewBox="0 0 320 190" role="img" aria-label={text.stripSaid(shown.length)}>
        <text x="4" y="24">
          {figureText(low + span, result.unit)}
        </text>
        <text x="4" y="156">
          {figureText(low, result.unit)}
        </text>
        {result.settings.map((one) => (
          <g key={one.setting}>
            <path
              class="strip-mean"
              d={`M${middle(one.setting) - width * 0.38} ${y(one.level)}h${width * 0.76}`}
            />
            <text x={middle(one.setting)} y="184" text-anchor="middle">
              {one.setting}
            </text>
          </g>
        ))}
        {shown
          .filter((run) => keys.includes(run.setting))
          .map((run) => {
            const own = shown.filter((other) => other.setting === run.setting);
            const step = (width * 0.6) / Math.max(own.length - 1, 1);
            const cx = middle(run.setting) - width * 0.3 + step * own.indexOf(run);
            const cy = y(run.without_drift ?? 0);
            return run.left_out ? (
              <path key={run.place} class="strip-out" d={cross(cx, cy)} />
            ) : (
              <circle key={run.place} class="strip-run" cx={cx} cy={cy} r="4.5" />
            );
          })}
      </svg>
      <p class="small">{text.stripNote}</p>
    </figure>
  );
}

const cross = (x: number, y: number) => `M${x - 4} ${y - 4}l8 8M${x + 4} ${y - 4}l-8 8`;

export function SettingsTable({
  result,
  labels,
}: {
  result: CompareResult;
  labels: Record<string, string>;
}) {
  return (
    <table class="compare-table">
      <Heads of={text.settingHead} />
      <tbody>
        {result.settings.map((one) => (
          <tr key={one.setting}>
            <th scope="row">
              {one.setting} {labels[one.setting] ?? ""}
            </th>
            <td class="num">{one.count}</td>
            <td class="num">{figureText(one.level, result.unit)}</td>
            <td class="num">
              {one.scatter_percent === null ? "–" : `${fixed(one.scatter_percent, 2)} %`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function LeftOut({ result }: { result: CompareResult }) {
  return (
    <>
      <p>{result.left_out_text}</p>
      {result.left_out.length > 0 && (
        <ul class="plain-list">
          {result.left_out.map((one) => (
            <li key={one.place}>
              {text.run(one.place, one.setting)}: {one.reason}
              {one.value !== null && ` (${figureText(one.value, result.unit)})`}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
