import { driveInput } from "../../store/settings.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readInstrument, readOwnLimit } from "../draft.ts";
import { readRunning } from "../running.ts";
import { type Method, methods, text } from "./meta.ts";

/** Whether the chain is read for the drive of the engine in the header. */
export function usesDrive(draft: Draft, { drive, chain }: Stand): boolean {
  if (drive === null || draft.fields.without_drive === "yes") return false;
  return chain === null || chain.pitch_mm === drive.pitch_mm;
}

/** Quantities that a maker's limit may be in: two jaw readings are not one reading. */
export function ownQuantities(method: Method, withDrive: boolean): string[] {
  return [
    "elongation_percent",
    ...(method === "inside-and-outside" ? [] : ["reading_mm"]),
    ...(withDrive ? ["movement_mm", "crank_rock_deg"] : []),
  ];
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const method = draft.method as Method;
  const { readings, needsRoller } = methods[method];
  const reader = new Reader(draft);
  reader.payload.method = method;
  const drive = usesDrive(draft, stand) ? stand.drive : null;
  let roller: number | null | undefined;
  if (drive) {
    const input = driveInput(drive, stand.chain);
    reader.payload.drive = input;
    roller = input.roller_diameter_mm;
  } else if (stand.chain) {
    reader.payload.pitch_mm = stand.chain.pitch_mm;
    roller = stand.chain.roller_diameter_mm;
    if (typeof roller === "number") reader.payload.roller_diameter_mm = roller;
  } else {
    const pitch = reader.number("pitch_mm", "length", text.pitch, true);
    if (pitch !== undefined) reader.payload.pitch_mm = pitch;
  }
  if (needsRoller && typeof roller !== "number") {
    const typed = reader.number("roller_diameter_mm", "length", text.roller, true);
    if (typed !== undefined) reader.payload.roller_diameter_mm = typed;
  }
  const pitches = reader.number("pitches", "count", text.pitches, true);
  if (pitches !== undefined) reader.payload.pitches = pitches;
  for (const { field, label } of readings) reader.readings(field, label);
  readInstrument(reader, "mm");
  const allowed = ownQuantities(method, drive !== null);
  const chosen = draft.fields.own_quantity ?? "";
  readOwnLimit(reader, draft, allowed.includes(chosen) ? chosen : "elongation_percent");
  const load = stand.chain ? reader.number("load_n", "percent", text.load) : undefined;
  const ran = readRunning(reader, draft);
  return {
    calc: "elongation",
    payload: reader.done(),
    missing: reader.missing,
    extra: { load_n: load ?? null, ...ran },
  };
}
