import { driveInput } from "../../store/settings.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readInstrument, readOwnLimit } from "../draft.ts";
import { readRunning } from "../running.ts";
import { text as shared } from "../strings.ts";
import { type Method, methods, text } from "./meta.ts";

/** Quantities that a maker's limit may be in. */
export function ownQuantities(method: Method): string[] {
  const { calc, field } = methods[method];
  const first = calc === "slack" ? "movement_mm" : "crank_rock_deg";
  return [first, ...(field === "readings_mm" ? ["reading_mm"] : []), "elongation_percent"];
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, { drive, chain, gears }: Stand): Ask {
  const method = draft.method as Method;
  const { calc, field, reading } = methods[method];
  const reader = new Reader(draft);
  if (drive) reader.payload.drive = driveInput(drive, chain, gears);
  else reader.lack(shared.needsDrive);
  if (drive && chain && chain.pitch_mm !== drive.pitch_mm) reader.lack(shared.otherChain);
  if (drive && gears && gears.pitch_mm !== drive.pitch_mm) reader.lack(shared.otherGears);
  reader.payload.method = method;
  reader.readings(field, reading);
  if (method === "damper-arc") {
    const diameter = reader.number("damper_diameter_mm", "length", text.damper, true);
    if (diameter !== undefined) reader.payload.damper_diameter_mm = diameter;
  }
  readInstrument(reader, field === "readings_mm" ? "mm" : "deg");
  const allowed = ownQuantities(method);
  const chosen = draft.fields.own_quantity ?? "";
  readOwnLimit(reader, draft, allowed.includes(chosen) ? chosen : (allowed[0] ?? ""));
  const extra = readRunning(reader, draft);
  return { calc, payload: reader.done(), missing: reader.missing, of: ["chain", "gears"], extra };
}
