import { driveInput } from "../../store/settings.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readInstrument, readOwnLimit } from "../draft.ts";
import { type Method, methods, text } from "./meta.ts";

/** Whether it is a gear of the engine in the header. */
export function usesDrive(draft: Draft, { drive }: Stand): boolean {
  return drive !== null && draft.fields.without_drive !== "yes";
}

/** The drive's roller diameter, which a pin should have as well. */
export function knownRoller(draft: Draft, stand: Stand): number | undefined {
  if (!usesDrive(draft, stand)) return undefined;
  const roller = stand.chain?.roller_diameter_mm ?? stand.drive?.roller_diameter_mm;
  return typeof roller === "number" ? roller : undefined;
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const method = draft.method as Method;
  const { reading, field: between } = methods[method];
  const reader = new Reader(draft);
  reader.payload.method = method;
  if (usesDrive(draft, stand) && stand.drive) {
    reader.payload.drive = driveInput(stand.drive, stand.chain, stand.gears);
    reader.payload.gear = draft.fields.gear;
  } else {
    reader.take("teeth", "count", text.teeth, true);
    reader.take("pitch_mm", "length", text.pitch, true);
  }
  reader.readings("readings_mm", reading);
  const roller = knownRoller(draft, stand);
  reader.take(between, "length", text.between[between], roller === undefined);
  if (roller !== undefined) reader.payload[between] ??= roller;
  readInstrument(reader, "mm");
  readOwnLimit(reader, draft, "reading_mm");
  return { calc: "gear", payload: reader.done(), missing: reader.missing, of: ["gears"] };
}
