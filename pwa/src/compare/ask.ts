/** The question for the core that a session's runs make. */
import type { components } from "../generated/api";
import type { Gone, Run, Session } from "../store/records.ts";
import { text } from "./strings.ts";

export type CompareInput = components["schemas"]["CompareInput"];
export type Quantity = CompareInput["quantity"];

/** What was chosen for a session; it outlives the page. */
export interface Chosen {
  quantity: Quantity;
  lower: number | null;
  upper: number | null;
  reference: string | null;
  drift: "auto" | "none";
  /** Why a run is left out, by its id. */
  reasons: Record<string, string>;
}

export const FIRST: Chosen = {
  quantity: "peak-power",
  lower: null,
  upper: null,
  reference: null,
  drift: "auto",
  reasons: {},
};

/** Runs of a session in their order, those set aside among them. */
export function runsOf(
  session: Session,
  runs: Run[],
  gone: Gone[],
): { run: Run; aside: boolean }[] {
  const here = runs.filter((one) => one.session_id === session.id);
  const away = gone
    .filter((one) => one.kind === "runs")
    .map((one) => one.record as Run)
    .filter((one) => one.session_id === session.id);
  return [
    ...here.map((run) => ({ run, aside: false })),
    ...away.map((run) => ({ run, aside: true })),
  ].sort((a, b) => a.run.place - b.run.place);
}

export function toPayload(
  session: Session,
  list: { run: Run; aside: boolean }[],
  chosen: Chosen,
): CompareInput | null {
  const kept = list.filter(({ run, aside }) => !aside && !chosen.reasons[run.id]?.trim());
  const keys = [...new Set(kept.map(({ run }) => run.setting))];
  if (!session.standard || keys.length < 2) return null;
  const named = session.settings.map((one) => one.key).filter((key) => keys.includes(key));
  const reference =
    chosen.reference && keys.includes(chosen.reference) ? chosen.reference : (named[0] ?? keys[0]);
  const band = chosen.quantity.startsWith("band");
  if (band && (chosen.lower === null || chosen.upper === null)) return null;
  return {
    standard: session.standard,
    quantity: chosen.quantity,
    ...(band ? { band_lower_rpm: chosen.lower, band_upper_rpm: chosen.upper } : {}),
    reference: reference ?? "",
    drift: chosen.drift,
    runs: list.map(({ run, aside }) => {
      const reason = aside ? text.aside : chosen.reasons[run.id]?.trim();
      return {
        setting: run.setting,
        place: run.place,
        conditions: run.conditions ?? null,
        figures_are: run.figures_are,
        peaks: run.peaks ?? null,
        curve: run.curve ?? null,
        ...(reason ? { left_out: reason } : {}),
      } as CompareInput["runs"][number];
    }),
  };
}

/** Mean torque of each setting on shared speeds, by the factor of each run; no drift taken out. */
export function meanCurves(
  list: { run: Run }[],
  factors: Map<number, number>,
  points = 61,
): { xs: number[]; lines: { setting: string; ys: number[] }[] } | null {
  const used = list.filter(({ run }) => run.curve && factors.has(run.place));
  if (used.length === 0) return null;
  const low = Math.max(...used.map(({ run }) => run.curve?.speed_rpm[0] ?? 0));
  const high = Math.min(...used.map(({ run }) => run.curve?.speed_rpm.at(-1) ?? 0));
  if (low >= high) return null;
  const xs = Array.from({ length: points }, (_, i) => low + ((high - low) * i) / (points - 1));
  const keys = [...new Set(used.map(({ run }) => run.setting))];
  const lines = keys.map((setting) => {
    const own = used.filter(({ run }) => run.setting === setting);
    const ys = xs.map((x) => {
      const sum = own.reduce(
        (total, { run }) => total + at(run, x) * (factors.get(run.place) ?? 1),
        0,
      );
      return sum / own.length;
    });
    return { setting, ys };
  });
  return { xs, lines };
}

function at({ curve }: Run, x: number): number {
  const xs = curve?.speed_rpm ?? [];
  const ys = curve?.torque_nm ?? [];
  let i = 1;
  while (i < xs.length - 1 && (xs[i] ?? 0) < x) i++;
  const [x0, x1, y0, y1] = [xs[i - 1] ?? 0, xs[i] ?? 1, ys[i - 1] ?? 0, ys[i] ?? 0];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
