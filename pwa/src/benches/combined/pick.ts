/** Which saved readings go into the estimate, and as what. */
import type { Reading } from "../../store/records.ts";
import type { Kind } from "./meta.ts";

export interface Candidate {
  id: string;
  calc: Reading["calc"];
  taken_at: string;
  quantity: Kind;
  value: number;
  /** Standard uncertainty, in the unit of the value. */
  uncertainty: number;
  /** Half of its 95 % interval, as its own screen shows it. */
  expanded: number;
}

const DIRECT: readonly string[] = ["elongation_percent", "movement_mm", "crank_rock_deg"];
const MOST = 10;

/** A reading as one of the kinds that can be combined; null if it is none. */
export function candidateOf({ id, calc, taken_at, result }: Reading): Candidate | null {
  if (!("measured" in result) || !("state" in result)) return null;
  const { measured, state } = result;
  const base = { id, calc, taken_at };
  if (DIRECT.includes(measured.quantity)) {
    const quantity = measured.quantity as Kind;
    const { value, standard_uncertainty, expanded_uncertainty } = measured;
    return {
      ...base,
      quantity,
      value,
      uncertainty: standard_uncertainty,
      expanded: expanded_uncertainty,
    };
  }
  // A sag is no kind of its own: it is the movement that the same slack would show.
  const movement = state?.movement_mm;
  if (!movement) return null;
  const half = (movement.high - movement.low) / 2;
  const uncertainty = movement.standard_uncertainty ?? half / measured.coverage_factor;
  return { ...base, quantity: "movement_mm", value: movement.value, uncertainty, expanded: half };
}

/** The readings to choose from, newest first; more than the core takes are not offered. */
export function candidates(newestFirst: Reading[]): Candidate[] {
  return newestFirst
    .map(candidateOf)
    .filter((one) => one !== null)
    .filter((one) => one.uncertainty > 0)
    .slice(0, MOST);
}

/** Ids ticked: those chosen, or, while nothing was chosen, the newest of each calculation. */
export function ticked(all: Candidate[], chosen: string | undefined): Set<string> {
  if (chosen !== undefined) {
    const ids = chosen.split(" ");
    return new Set(all.filter((one) => ids.includes(one.id)).map((one) => one.id));
  }
  return new Set(
    all
      .filter((one, i) => all.findIndex((other) => other.calc === one.calc) === i)
      .map((one) => one.id),
  );
}

/** The choice as it is kept, after one of them was ticked or cleared. */
export function toggled(now: Set<string>, id: string): string {
  const next = new Set(now);
  if (!next.delete(id)) next.add(id);
  return [...next].join(" ");
}
