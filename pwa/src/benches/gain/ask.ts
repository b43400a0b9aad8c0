import { currentEngine, driveInput } from "../../store/settings.ts";
import { isLength } from "../../units/parse.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readWindow } from "../draft.ts";
import { readHeating } from "../heat/ask.ts";
import { text as shared } from "../strings.ts";
import { rowsFromSessions } from "./from-sessions.ts";
import { FRICTION, MOST_ROWS, text } from "./meta.ts";

/** How many comparisons the draft holds. */
export const rowsOf = (draft: Draft): number => Number(draft.fields.rows ?? "0");

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, { drive, chain, gears }: Stand): Ask {
  const reader = new Reader(draft);
  if (drive) reader.payload.drive = driveInput(drive, chain, gears);
  else reader.lack(shared.needsDrive);
  reader.take("movement_mm", "length", text.needsMovement, true);
  reader.take("standard_uncertainty_mm", "length", text.sure);
  readWindow(reader);
  reader.take("peak_power_kw", "power", text.power, true);
  reader.take("peak_speed_rpm", "number", text.speed, true);
  if (draft.fields.block_material) {
    const heat = new Reader(draft);
    readHeating(heat, draft);
    if (heat.missing) reader.lack(heat.missing);
    reader.payload.heat = heat.payload;
  }
  for (const field of FRICTION) {
    reader.take(field, isLength(field) ? "length" : "number", text.friction[field]);
  }
  const source = (draft.fields.friction_source ?? "").trim();
  if (source) reader.payload.friction_source = source;
  readEvidence(reader, draft);
  return { calc: "gain", payload: reader.done(), missing: reader.missing, of: ["chain", "gears"] };
}

function readEvidence(reader: Reader, draft: Draft): void {
  const rows: Record<string, unknown>[] = [];
  for (let i = 0; i < rowsOf(draft); i += 1) {
    const row = text.row(i + 1);
    const number = (field: string, kind: "length" | "signed" | "percent", label: string) =>
      reader.number(`${field}_${i}`, kind, `${row}, ${label}`, true);
    const engine = (draft.fields[`engine_${i}`] ?? "").trim();
    if (engine === "") reader.lack(shared.needs(`${row}, ${text.engine}`));
    rows.push({
      engine,
      from_movement_mm: number("from_movement_mm", "length", text.from),
      to_movement_mm: number("to_movement_mm", "length", text.to),
      gain_percent: number("gain_percent", "signed", text.gainOf),
      standard_uncertainty_percent: number("standard_uncertainty_percent", "percent", text.u),
    });
  }
  // What was typed goes first: it was meant.
  const all = [...rows, ...rowsFromSessions(draft)].slice(0, MOST_ROWS);
  if (all.length > 0) reader.payload.evidence = all;
  const typed = (draft.fields.engine ?? "").trim();
  const here = currentEngine.value?.name;
  const asked = typed || (all.some(({ engine }) => engine === here) ? here : "");
  if (asked) reader.payload.engine = asked;
}
