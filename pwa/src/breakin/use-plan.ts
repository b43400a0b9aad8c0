/** A plan as it stands after its log, and the way to write into the log. */
import { useLatest } from "../core/latest.ts";
import type { PlanAdapted, PlanEvent } from "../core/results.ts";
import type { Plan } from "../store/records.ts";
import { plans, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { startedAt } from "./taken-back.ts";

export function useAdapted(plan: Plan): PlanAdapted | null {
  const answer = useLatest("plan-adapted", { plan: plan.input, log: plan.log });
  return answer?.ok ? answer.result : null;
}

/** A line of the log, before it has its time. */
export type Told = Omit<PlanEvent, "at">;

/** Writes down what happened; on the phone when it returns, at the service when it can be. */
export async function tell(id: string, ...told: Told[]): Promise<void> {
  const plan = plans.value.find((one) => one.id === id);
  if (!plan) return;
  const at = new Date().toISOString();
  const log = [...plan.log, ...told.map((one) => ({ ...one, at }))] as Plan["log"];
  await save("plans", { ...plan, log, started_at: startedAt(log, plan.started_at ?? null) });
  void sync();
}
