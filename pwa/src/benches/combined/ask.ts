import { driveInput } from "../../store/settings.ts";
import { readings } from "../../store/state.ts";
import { COVERAGE } from "../../units/coverage.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { OWN_KINDS, Reader } from "../draft.ts";
import { placeOf, readingsOn } from "../last-reading.ts";
import { text as shared } from "../strings.ts";
import { KINDS, text, UNCERTAINTY } from "./meta.ts";
import { type Candidate, candidates, ticked } from "./pick.ts";

/** Name of the entry that keeps which readings of a chain were ticked. */
export function pickField({ chain, gears }: Stand): string {
  return `picked:${chain?.id ?? ""}:${gears?.id ?? ""}`;
}

/** The saved readings on offer, and which of them are ticked. */
export function offered(draft: Draft, stand: Stand): { all: Candidate[]; on: Set<string> } {
  const all = candidates(readingsOn(readings.value, placeOf(stand)));
  return { all, on: ticked(all, draft.fields[pickField(stand)]) };
}

/** Field of a typed value's plus-or-minus. */
export const errorField = (kind: string) => `typed_${kind.replace(/_([^_]+)$/, "_error_$1")}`;
export const typedField = (kind: string) => `typed_${kind}`;

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const reader = new Reader(draft);
  if (stand.drive) reader.payload.drive = driveInput(stand.drive, stand.chain, stand.gears);
  else reader.lack(shared.needsDrive);
  const { all, on } = offered(draft, stand);
  const measurements: Record<string, unknown>[] = all
    .filter((one) => on.has(one.id))
    .map(({ quantity, value, uncertainty }) => ({
      quantity,
      [quantity]: value,
      [UNCERTAINTY[quantity]]: uncertainty,
    }));
  for (const kind of KINDS) {
    const label = text.names[kind];
    const read = OWN_KINDS[kind] ?? "length";
    const value = reader.number(typedField(kind), read, label);
    if (value === undefined) continue;
    const error = reader.number(errorField(kind), read, text.error(label), true);
    if (error === undefined) continue;
    measurements.push({ quantity: kind, [kind]: value, [UNCERTAINTY[kind]]: error / COVERAGE });
  }
  if (measurements.length === 0) reader.lack(text.needsAny);
  reader.payload.measurements = measurements;
  return {
    calc: "combined",
    payload: reader.done(),
    missing: reader.missing,
    of: ["chain", "gears"],
  };
}
