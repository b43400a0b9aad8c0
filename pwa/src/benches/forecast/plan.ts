/** What the plan of running in says for a forecast: oil, speed, use a week. */
import type { Plan } from "../../store/records.ts";

export const OILS = ["running-in", "mineral", "conventional", "synthetic"] as const;
export type OilKind = Plan["input"]["oil"]["kind"];

/** The newest plan of the build in hand, or of the engine where no build is in hand. */
export function planOf(
  plans: Plan[],
  engineId: string | null,
  buildId: string | null,
): Plan | null {
  const found = plans.filter((one) =>
    buildId ? one.build_id === buildId : engineId !== null && one.engine_id === engineId,
  );
  return found.sort((a, b) => b.created_at.localeCompare(a.created_at))[0] ?? null;
}

/** The oil that was filled last, and whether it was changed on the way. */
export function oilOf(plan: Plan | null): { kind: OilKind; changed: boolean } | null {
  if (!plan) return null;
  const changes = plan.log.filter((one) => one.kind === "oil-changed" && one.oil);
  const last = changes.at(-1)?.oil;
  return { kind: last?.kind ?? plan.input.oil.kind, changed: changes.length > 0 };
}

/** Average speed that a plan goes by [km/h]; null where it assumes one. */
export function speedOf(plan: Plan | null): number | null {
  if (!plan) return null;
  const { distance_per_week_km: km, running_per_week_h: h, average_speed_km_per_h } = plan.input;
  if (typeof km === "number" && typeof h === "number") return km / h;
  return average_speed_km_per_h ?? null;
}

/** How it is used: one of the two a week. */
export type Use = { km: number } | { hours: number };

export function useOf(plan: Plan | null): Use | null {
  const { distance_per_week_km: km, running_per_week_h: hours } = plan?.input ?? {};
  if (typeof km === "number") return { km };
  return typeof hours === "number" ? { hours } : null;
}
