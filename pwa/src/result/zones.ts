/** The scale under the number: which stretches of it are good, doubtful or bad. */
import type { BenchResult, Judgement, Limit } from "../core/results.ts";
import { text } from "./strings.ts";
import type { Tone } from "./tone.tsx";

export interface Zone {
  from: number;
  /** Infinity for the last. */
  to: number;
  tone: Tone;
  label: string;
}

export interface ScaleData {
  quantity: string;
  value: number;
  low: number;
  high: number;
  zones: Zone[];
  /** Another value of the same quantity, drawn hollow: what it was before. */
  before?: number;
  /** What the scale shows, where it is not the number above it. */
  caption?: string;
}

/** Zones of the trade's slack window, from whichever limits there are. */
export function windowZones(limits: Limit[]): Zone[] {
  const limitOf = (id: string) => limits.find((one) => one.id === id);
  const wanted = limitOf("slack-window");
  const tight = limitOf("slack-too-tight")?.lower ?? 0;
  const loose = limitOf("slack-too-loose")?.upper ?? Number.POSITIVE_INFINITY;
  if (wanted?.lower == null || wanted.upper == null) return [];
  const { zones } = text;
  return [
    { from: 0, to: tight, tone: "bad", label: zones.tooTight },
    { from: tight, to: wanted.lower, tone: "caution", label: zones.tight },
    { from: wanted.lower, to: wanted.upper, tone: "good", label: zones.wanted },
    { from: wanted.upper, to: loose, tone: "caution", label: zones.loose },
    { from: loose, to: Number.POSITIVE_INFINITY, tone: "bad", label: zones.tooLoose },
  ];
}

/** Zones of limits in the shown quantity: agreed good, in dispute or in between, agreed bad. */
function limitZones(found: Judgement[]): Zone[] {
  const lowers = found.map((one) => one.limit.lower).filter((x) => x !== null);
  const uppers = found.map((one) => one.limit.upper).filter((x) => x !== null);
  const ends = found.map((one) => one.limit.upper_to ?? one.limit.upper).filter((x) => x !== null);
  const from = lowers.length > 0 ? Math.max(...lowers) : 0;
  const first = uppers.length > 0 ? Math.min(...uppers) : Number.POSITIVE_INFINITY;
  const last = ends.length > 0 ? Math.max(...ends) : first;
  const all: Zone[] = [
    { from: 0, to: from, tone: "bad", label: "" },
    { from, to: first, tone: "good", label: "" },
    { from: first, to: last, tone: "caution", label: "" },
    { from: last, to: Number.POSITIVE_INFINITY, tone: "bad", label: "" },
  ];
  return all.filter((zone) => zone.to > zone.from);
}

/** The wanted slack and the ends beyond it: one scale shows all three. */
const OF_THE_TRADE = new Set(["slack-window", "slack-too-tight", "slack-too-loose"]);

/** What to draw on the scale; a quantity that no limit speaks of is shown as movement. */
export function scaleData(result: BenchResult): ScaleData {
  const { measured, state, verdict } = result;
  const by = verdict.limit;
  const at = { value: measured.value, low: measured.low, high: measured.high };
  if (by && OF_THE_TRADE.has(by.id) && state) {
    const zones = windowZones(result.judgements.map((one) => one.limit));
    const caption = measured.quantity === "movement_mm" ? {} : { caption: text.asMovement };
    return { quantity: "movement_mm", ...state.movement_mm, zones, ...caption };
  }
  const inQuantity = result.judgements.filter((one) => one.limit.quantity === measured.quantity);
  const ruling = inQuantity.filter((one) => one.limit.id === by?.id);
  const found = ruling.length > 0 ? ruling : inQuantity;
  return { quantity: measured.quantity, ...at, zones: limitZones(found) };
}
