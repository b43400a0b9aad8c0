import { collect } from "../../units/reading.ts";
import type { Ask, Draft } from "../bench.ts";
import { Reader, readInstrument, readingsOf } from "../draft.ts";
import { type Scale, type Side, STEPS, type Step, text } from "./meta.ts";

/** What weighs the plus-or-minus, in the order in which it is asked for. */
export const LENGTHS = {
  wheel_diameter_mm: text.diameter,
  parallax_mm: text.parallax,
  depth_error_mm: text.depth,
  stroke_mm: text.stroke,
  rod_length_mm: text.rod,
  drop_mm: text.drop,
};

export function stepOf(draft: Draft): Step {
  return STEPS.find((one) => one === draft.fields.step) ?? "safe";
}

export function scaleOf(draft: Draft): Scale {
  return (draft.fields.wheel as Scale | undefined) ?? "both-ways";
}

/** How often a side was read, the entry being typed included. */
export function countOf(draft: Draft, side: Side): number {
  const { entry, list } = readingsOf(draft, side);
  return collect(list, { text: entry, unit: "deg" }).values.length;
}

/** The draft with an entry that can be read put into its list, so that the next one can follow. */
export function committed(draft: Draft, side: Side): Partial<Draft> {
  const { entry, list } = readingsOf(draft, side);
  const { wrong } = collect(list, { text: entry, unit: "deg" });
  if (entry.trim() === "" || wrong) return {};
  const done = { entry: "", list: [...list, { text: entry.trim(), unit: "deg" as const }] };
  return { readings: { ...draft.readings, [`${draft.method}/${side}`]: done } };
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft): Ask {
  const reader = new Reader(draft);
  reader.payload.method = draft.method;
  reader.payload.wheel = scaleOf(draft);
  for (const side of ["before_readings_deg", "after_readings_deg"] as const) {
    reader.readings(side, text.readings[side]);
  }
  for (const [field, label] of Object.entries(LENGTHS)) reader.take(field, "length", label);
  readInstrument(reader, "deg");
  return { calc: "tdc", payload: reader.done(), missing: reader.missing, of: [] };
}
