import { driveInput, unitOf } from "../../store/settings.ts";
import { parseLength } from "../../units/parse.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readWindow } from "../draft.ts";
import { text as shared } from "../strings.ts";
import { centreFromChange, centreFromMandrels, type Way } from "./centre.ts";
import { BLOCK_PARTS, type CentreWay, DOUBTS, OWN, type Part, text } from "./meta.ts";

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, { drive, chain, gears }: Stand): Ask {
  const part = draft.method as Part;
  const reader = new Reader(draft);
  if (drive) reader.payload.drive = driveInput(drive, chain, gears);
  else reader.lack(shared.needsDrive);
  reader.take("movement_mm", "length", text.movement);
  if (part === "heat") readHeat(reader, draft);
  else if (drive) readCentre(reader, draft, drive.centre_distance_mm);
  readWindow(reader);
  return { calc: part, payload: reader.done(), missing: reader.missing, of: ["chain", "gears"] };
}

function readHeat(reader: Reader, draft: Draft): void {
  readHeating(reader, draft);
  reader.take("standard_uncertainty_mm", "length", text.sure.standard_uncertainty_mm);
  reader.take("stiffness_n_per_mm", "number", text.stiffness);
  reader.take("compliance_um_per_kn", "number", text.give);
  const source = (draft.fields.stiffness_source ?? "").trim();
  if (source) reader.payload.stiffness_source = source;
}

/** Adds materials and temperatures. */
export function readHeating(reader: Reader, draft: Draft): void {
  let own = false;
  for (const part of BLOCK_PARTS) {
    const chosen = draft.fields[`${part}_material`] ?? "";
    if (chosen === OWN) {
      own = true;
      const label = `${text.material[part]}, ${text.expansion.toLowerCase()}`;
      reader.take(`${part}_expansion_ppm`, "number", label, true);
    } else if (chosen !== "") reader.payload[`${part}_material`] = chosen;
    else if (part === "block") reader.lack(text.needsBlock);
    reader.take(`${part}_temperature_c`, "temperature", text.temperature[part]);
  }
  if (own) {
    const source = (draft.fields.expansion_source ?? "").trim();
    if (source === "") reader.lack(shared.needs(text.source));
    else reader.payload.expansion_source = source;
  }
  reader.take("cold_temperature_c", "temperature", text.temperature.cold);
  for (const field of DOUBTS) {
    reader.take(field, field.endsWith("_k") ? "difference" : "number", text.sure[field]);
  }
}

function readCentre(reader: Reader, draft: Draft, before: number): void {
  const number = (field: string, label: string) => reader.number(field, "length", label, true);
  const way = draft.fields.centre_way as CentreWay;
  if (way === "new") {
    reader.take("new_centre_distance_mm", "length", text.newCentre, true);
  } else if (way === "change") {
    const change = number("centre_change_mm", text.change);
    if (change !== undefined) {
      const moved = centreFromChange(before, change, draft.fields.change_way as Way);
      reader.payload.new_centre_distance_mm = moved;
    }
  } else {
    const outer = number("mandrel_outer_mm", text.outer);
    const first = number("mandrel_first_mm", text.firstMandrel);
    const second = number("mandrel_second_mm", text.secondMandrel);
    if (outer !== undefined && first !== undefined && second !== undefined) {
      reader.payload.new_centre_distance_mm = centreFromMandrels(outer, first, second);
    }
  }
}

/** A length of the draft [mm], if it can be read. */
export function typedLength(draft: Draft, field: string): number | undefined {
  const read = parseLength(draft.fields[field] ?? "", unitOf(field));
  return read.ok ? read.mm : undefined;
}
