/** How a forecast's running and days are written. */
import type { ForecastResult } from "../../core/results.ts";
import { settings } from "../../store/settings.ts";
import { distanceOf, ranText, runningIn, runningNumber } from "../../units/running.ts";
import { counted, dayText, momentOf } from "./dates.ts";
import { text } from "./meta.ts";
import type { Use } from "./plan.ts";

export type Event = ForecastResult["events"][number];

/** "200 km", or "4 h". */
export function useText(use: Use): string {
  if ("hours" in use) return `${runningNumber(use.hours)} h`;
  return ranText({ km: use.km }, distanceOf(settings.value.running));
}

/** Running in the unit chosen, without it; null is beyond what is forecast. */
export function runningText(hours: number | null, result: ForecastResult): string {
  const { running } = settings.value;
  const speed = result.average_speed_km_per_h;
  const number = (h: number) => runningNumber(runningIn(h, running, speed));
  return hours === null ? text.far(number(result.horizon_h)) : number(hours);
}

/** The same where it is ahead; in words where it was passed. */
export function aheadText(hours: number | null, result: ForecastResult): string {
  const now = result.at_running_h;
  if (hours === null || hours > now) return runningText(hours, result);
  return now > 0 ? text.byNow : text.onFitting;
}

/** The day on which so much running is reached; "" where no use a week is known. */
export function dayOf(hours: number | null, result: ForecastResult): string {
  const by = counted.value;
  if (!by) return "";
  const far = text.farOff;
  const speed = result.average_speed_km_per_h;
  const moment = hours === null ? null : momentOf(hours, by, speed);
  return dayText(moment, Date.now(), { passed: text.passed, far });
}

/** The first event that has, most likely, not happened yet. */
export function pendingOf(result: ForecastResult): Event | null {
  return result.events.find((one) => one.probability_by_now < 0.5) ?? null;
}
