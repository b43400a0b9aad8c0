/** A lobe out of the lift bench's draft: for its own question, and for rockers and clearance. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { unitOf } from "../../store/settings.ts";
import { kept } from "../../store/state.ts";
import type { Draft } from "../bench.ts";
import { Reader, readInstrument } from "../draft.ts";
import { CHOICES, type Choice, empty, type Lobe, text } from "./meta.ts";

/** The tables, as typed on the lift bench. */
const liftDraft = signal<Draft | null>(null);

/** The lift bench's draft, read anew each time a bench that rests on it is opened. */
export function useLiftDraft(): Draft | null {
  useEffect(() => {
    void kept<Draft>("draft:lift").then((found) => {
      liftDraft.value = { ...empty, ...found };
    });
  }, []);
  return liftDraft.value;
}

/** What was chosen; a table of lifts is taken in the unit that lengths are in, as all fields are. */
export function chosen(draft: Draft, lobe: Lobe, choice: Choice): string {
  const usual = choice === "lift_unit" ? unitOf("own_height_mm") : Object.keys(CHOICES[choice])[0];
  return draft.fields[`${lobe}_${choice}`] || (usual ?? "");
}

export const tableOf = (draft: Draft, lobe: Lobe): string => draft.fields[`${lobe}_text`] ?? "";

/** The lobe as the core takes it; null without a table. What is missing is told to the reader. */
export function lobeOf(draft: Draft, lobe: Lobe, asking: Reader): Record<string, unknown> | null {
  const table = tableOf(draft, lobe);
  if (table.trim() === "") return null;
  const reader = new Reader(draft);
  const valve = chosen(draft, lobe, "lift_of") === "valve";
  const ratio = reader.number(`${lobe}_table_ratio`, "number", text.ratio, valve);
  const lash = reader.number(`${lobe}_table_lash_mm`, "length", text.lash);
  const installed = reader.number(`${lobe}_installed`, "angle", text.installed[lobe]);
  const angleColumn = reader.number(`${lobe}_angle_column`, "count", text.angleColumn);
  const liftColumn = reader.number(`${lobe}_lift_column`, "count", text.liftColumn);
  readInstrument(reader, "mm");
  readInstrument(reader, "deg");
  if (reader.missing) asking.lack(reader.missing);
  const made: Record<string, unknown> = { ...reader.payload, text: table };
  for (const choice of Object.keys(CHOICES) as Choice[]) made[choice] = chosen(draft, lobe, choice);
  if (valve && ratio !== undefined) made.table_ratio = ratio;
  if (valve && lash !== undefined) made.table_lash_mm = lash;
  if (installed !== undefined) made.installed_centreline_deg = installed;
  if (angleColumn !== undefined) made.angle_column = angleColumn;
  if (liftColumn !== undefined) made.lift_column = liftColumn;
  return made;
}
