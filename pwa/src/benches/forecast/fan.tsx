import { useMemo } from "preact/hooks";
import type { ForecastResult } from "../../core/results.ts";
import { useDrawn } from "../../picture/drawn.ts";
import { lengthTo, scaleOf } from "../../result/quantity.ts";
import type { PicturesProps } from "../../result/shows.ts";
import { MOVEMENT_DECIMALS } from "../../result/slack-glance.ts";
import { shownTheme } from "../../shell/theme.ts";
import { settings } from "../../store/settings.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { type RunningUnit, runningIn } from "../../units/running.ts";
import type { Drawn } from "./fan-plot.ts";
import { text } from "./meta.ts";
import { runningText } from "./words.ts";

/** Slack over the running: median and bands, readings with their bars, window and limit. */
export function Fan({ result, length }: PicturesProps<ForecastResult>) {
  const { running } = settings.value;
  const theme = shownTheme.value;
  const drawn = useMemo(
    () => (result ? drawnOf(result, length, running) : null),
    [result, length, running],
  );
  const draw = async (of: Drawn) => {
    const { plotFan } = await import("./fan-plot.ts");
    return (into: HTMLElement) => plotFan(into, of);
  };
  const box = useDrawn(drawn && (() => draw(drawn)), [drawn, theme]);
  if (!result || !drawn) return null;
  return (
    <figure class="panel chart">
      <figcaption>{text.fan}</figcaption>
      <ul class="keys-of-lines">
        <Key kind="fan-median" label={text.bands.median} />
        <Key kind="fan-80" label={text.bands[80]} />
        <Key kind="fan-95" label={text.bands[95]} />
        {drawn.points.length > 0 && <Key kind="fan-reading" label={text.bands.reading} />}
      </ul>
      <div ref={box} class="fan-plot" role="img" aria-label={said(result, length)} />
      <p class="small">{text.fanNote}</p>
    </figure>
  );
}

function Key({ kind, label }: { kind: string; label: string }) {
  const band = kind === "fan-80" || kind === "fan-95";
  return (
    <li>
      <svg viewBox="0 0 36 12" aria-hidden="true" class={kind}>
        {band ? <path d="M0 0H36V12H0z" /> : <path d={MARKS[kind]} />}
      </svg>
      {label}
    </li>
  );
}

const MARKS: Record<string, string> = {
  "fan-median": "M0 6H36",
  "fan-reading": "M18 0V12M14 0H22M14 12H22M15 6H21",
};

function drawnOf(result: ForecastResult, length: LengthUnit, running: RunningUnit): Drawn {
  const { by, unit } = scaleOf("_mm", length);
  const x = (hours: number) => runningIn(hours, running, result.average_speed_km_per_h);
  const y = (mm: number | null) => (mm === null ? null : mm / by);
  const column = (name: "median" | "low_80" | "high_80" | "low_95" | "high_95") =>
    result.fan.map((row) => y(row.movement_mm[name]));
  const limit = result.events.find((one) => one.event === "reaches-limit");
  return {
    xs: result.fan.map((row) => x(row.at_running_h)),
    median: column("median"),
    low80: column("low_80"),
    high80: column("high_80"),
    low95: column("low_95"),
    high95: column("high_95"),
    points: result.points.flatMap(({ at_running_h, movement_mm: at }) =>
      at ? [{ x: x(at_running_h), y: at.value / by, low: at.low / by, high: at.high / by }] : [],
    ),
    window: { from: result.window.lower_mm / by, to: result.window.upper_mm / by },
    limit: limit ? limit.movement_mm / by : null,
    xLabel: text.fanAxis(running),
    yLabel: text.movementAxis(unit),
  };
}

/** The picture in words: where it begins and where it ends. */
function said(result: ForecastResult, length: LengthUnit): string {
  const { running } = settings.value;
  const mm = (value: number | null) => lengthTo(value ?? 0, length, MOVEMENT_DECIMALS);
  const ends = [result.fan[0], result.fan.at(-1)];
  const told = ends.map((row) => {
    if (!row) return "";
    const { median, low_95, high_95 } = row.movement_mm;
    const at = `${runningText(row.at_running_h, result)} ${running}`;
    return text.fanSaid(at, mm(median), mm(low_95), mm(high_95));
  });
  return `${text.fan}. ${told.join(" ")}`;
}
