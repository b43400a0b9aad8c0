/** Forecast bench: its words. */

import type { ForecastResult } from "../../core/results.ts";
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export const empty: Draft = { method: "", readings: {}, fields: {} };

type EventName = ForecastResult["events"][number]["event"];

export const text = words("forecast", {
  title: "Forecast",
  save: "Save forecast",
  quantity: "When the slack will be where",
  readings: "Readings so far",
  none: "No reading saved here says how far this chain had run on these gears, so none counts. Save a slack, rock or wear reading, with how far it has run: until then this is what is known of any such chain.",
  ofBuild: (label: string) => `Those of the build “${label}”.`,
  ran: (of: string) => `Run since the first start, at ${of}`,
  ranWhy: "No running was noted with this one. Type it, and it counts.",
  notPlaced: "not used: how far it had run is not known",
  oil: "Oil in the engine",
  oilFromPlan: (kind: string) => `The plan of running in says: ${kind.toLowerCase()}.`,
  oilChanged: "It was changed on the way: the forecast takes the last for all of it.",
  oils: {
    "running-in": "Running-in",
    mineral: "Mineral",
    conventional: "Conventional",
    synthetic: "Synthetic",
  },
  oilUnknown: "Not known",
  oilWhy: "It moves how long the first wear takes, as the trade tells it; no source gives figures.",
  use: "Use a week",
  useBy: "The use is counted",
  useWays: { distance: "By distance", hours: "By hours" },
  useFromPlan: (use: string) => `Left empty: ${use}, from the plan.`,
  useHint: "Turns running into dates; without it there are none.",
  speed: "Average speed",
  speedHint: (speed: string) =>
    `Turns hours into distance. Left empty: as in the plan, else ${speed}, from memory, unverified.`,
  limitUsed: "The forecast runs to this limit instead of the trade's.",
  savesOwn: "Saved is the phone's own answer, which may differ a little.",
  units: "Count the running in",
  happens: {
    "enters-window": "Enters the window",
    "leaves-window": "Leaves the window",
    "reaches-limit": "Reaches the limit",
  } satisfies Record<EventName, string>,
  now: {
    "enters-window": "Tighter than the window as yet",
    "leaves-window": "In the window now, most likely",
    "reaches-limit": "Past the window, the limit ahead",
  } satisfies Record<EventName, string>,
  over: "The limit is reached, most likely",
  evenChance: (middle: string, unit: string) =>
    `80 % of such chains; even chance by ${middle} ${unit}`,
  little: "Nothing measured yet: very little is known",
  far: (end: string) => `over ${end}`,
  // Nobody's slack is at a limit to the millimetre: a level is where an event happens.
  level: (length: string) => `at ${length} of movement`,
  intervals: { median: "Even chance by", 80: "80 %", 95: "95 %" },
  byNow: "by now",
  onFitting: "on fitting",
  // How little: in the words of the thing that matters.
  spanOfLittle: (low: string, high: string, unit: string) =>
    `How little: the limit may come anywhere from ${low} to ${high} ${unit}, and once in 20 beyond even that.`,
  to: (low: string, high: string) => `${low} to ${high}`,
  noDates: "Give the use a week, and each has its date.",
  passed: "passed",
  farOff: "decades off",
  today: "now",
  dated: (use: string) => `Dates by ${use} a week.`,
  next: "Best time for the next reading",
  nextAt: (at: string, due: string) => (due ? `At ${at}: ${due}.` : `At ${at}.`),
  nextNow: "Now.",
  nextFirst: "Now: a first reading.",
  measure: "Measure the slack",
  nextNone: "No reading ahead would tell more of this.",
  intoPlan: "Put it into the plan's calendar",
  inPlan: (at: string) => `In the plan: measure at ${at}.`,
  openPlan: "Open the plan",
  planFirst: "A plan of running in can hold it as a re-check, with its date in the calendar.",
  makePlan: "Make a plan",
  method: {
    laplace: "Worked out on this phone: Laplace approximation, its shape put right.",
    full: "Worked out by the service: the full posterior.",
  } satisfies Record<ForecastResult["method"], string>,
  behind: (engines: number) =>
    engines === 0
      ? "Behind it: no engine of this shop, only orders of magnitude."
      : `Behind it: ${engines} engines of this shop on this oil.`,
  asking: "Asking the service for the full calculation …",
  waiting:
    "The service works it out in full, with what the shop's other engines tell; it is asked as soon as it can be reached.",
  refused: "The service could not use it.",
  unpaired:
    "Paired with the shop's service, this is worked out in full, and rests on the shop's other engines.",
  history: (used: number, why: string) =>
    `Of the shop's other engines ${used} tell of this one${why ? `; not ${why}` : ""}.`,
  historyWhy: {
    of_other_kind: (n: number) => `${n} on another oil or pitch`,
    without_oil: (n: number) => `${n} whose oil is not known`,
    without_readings: (n: number) => `${n} read less than twice`,
  },
  resting: "What it rests on",
  fan: "Slack over the running",
  fanNote:
    "Line: as likely above as below. Bands: 80 % and 95 % of the chains that go with the readings. Bars: 95 % of each reading.",
  bands: { median: "Median", 80: "80 %", 95: "95 %", reading: "Reading" },
  window: "window",
  limit: "limit",
  fanAxis: (unit: string) => (unit === "h" ? "Running, h" : `Run, ${unit}`),
  movementAxis: (unit: string) => `Movement, ${unit}`,
  fanSaid: (at: string, median: string, low: string, high: string) =>
    `After ${at} the median is ${median}, with 95 % between ${low} and ${high}.`,
  wear: "How it wears",
  wearHead: ["", "Before any reading", "After the readings"],
  share: (median: string, low: string, high: string) =>
    `First wear done by now: ${median} %, with 95 % between ${low} and ${high} %.`,
  points: "Readings, as movement",
  unused: "not used: cannot be told from a taut chain",
  quality: (share: string) =>
    `Share of the sample points that count: ${share}. Near 1 is sound, near 0 rough.`,
});
