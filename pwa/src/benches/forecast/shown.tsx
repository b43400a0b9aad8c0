/** How a forecast is shown. What stands below the number is loaded with it. */
import type { ForecastResult } from "../../core/results.ts";
import type { Glance } from "../../result/glance.ts";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import type { Tone } from "../../result/tone.tsx";
import { later } from "../../shell/later.tsx";
import { settings } from "../../store/settings.ts";
import { text } from "./meta.ts";
import { aheadText, type Event, pendingOf, runningText } from "./words.ts";

const TONES: Record<Event["event"], Tone> = {
  "enters-window": "caution",
  "leaves-window": "good",
  "reaches-limit": "caution",
};

function glance(result: ForecastResult): Glance {
  const pending = pendingOf(result);
  const base = { side: "", scale: null, limit: null, unit: settings.value.running };
  const measured = result.readings_used > 0;
  if (!pending) {
    return {
      ...base,
      figure: "at_running_h",
      what: text.happens["reaches-limit"],
      number: text.today,
      unit: "",
      under: "",
      tone: "bad",
      outcome: "over",
      word: text.over,
      headline: text.over,
    };
  }
  const { median, low_80, high_80 } = pending.at_running_h;
  const ends = text.to(aheadText(low_80, result), aheadText(high_80, result));
  const headline = measured ? text.now[pending.event] : text.little;
  const middle = median === null ? shared.nothing : runningText(median, result);
  return {
    ...base,
    figure: "at_running_h",
    what: text.happens[pending.event],
    // One large figure would claim more than is known before anything was measured.
    number: measured ? middle : ends,
    under: measured ? `80 %: ${ends} ${base.unit}` : text.evenChance(middle, base.unit),
    tone: measured ? TONES[pending.event] : "open",
    outcome: measured ? pending.event : "not-measured",
    word: headline,
    headline,
  };
}

export const forecastShown: Shows<ForecastResult> = {
  glance,
  Reasons: later<ShownProps<ForecastResult>>(async () => (await import("./reasons.tsx")).Reasons),
  Pictures: later<PicturesProps<ForecastResult>>(async () => (await import("./fan.tsx")).Fan),
  Details: later<ShownProps<ForecastResult>>(async () => (await import("./details.tsx")).Details),
};
