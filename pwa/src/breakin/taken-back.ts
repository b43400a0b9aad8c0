/** What can be taken back of a log, by the rule of the core (`plan_log.taken_back`). No screen here. */
import type { PlanEvent } from "../core/results.ts";

/** A start or an end of a step, as it stands in a log. */
export interface Told {
  kind: "started" | "done" | "cut-short" | "skipped";
  step: string;
  at: string;
  run_min?: number | null;
}

const KINDS: readonly string[] = [
  "started",
  "done",
  "cut-short",
  "skipped",
] satisfies Told["kind"][];

/** Starts and ends of steps that were not taken back, in their order. */
export function standing(log: readonly PlanEvent[]): Told[] {
  let found: Told[] = [];
  for (const one of log) {
    if (KINDS.includes(one.kind)) found.push(one as Told);
    if (one.kind !== "taken-back") continue;
    const start = (told: Told) => told.kind === "started";
    const last = found.findLast((told) => told.step === one.step);
    if (last) found = found.filter((t) => t.step !== one.step || start(t) !== start(last));
  }
  return found;
}

/** When the engine first ran: a start that was taken back was none. */
export function startedAt(log: readonly PlanEvent[], before: string | null): string | null {
  const starts = (found: { kind: string }[]) => found.filter((one) => one.kind === "started");
  if (starts([...log]).length === 0) return before;
  return (starts(standing(log))[0] as Told | undefined)?.at ?? null;
}
