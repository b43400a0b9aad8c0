/** What the fit is judged by: the window wanted, and whether cold or hot. */
import type { Draft, Stand } from "../../benches/bench.ts";
import { Reader, readWindow } from "../../benches/draft.ts";
import { readHeating } from "../../benches/heat/ask.ts";
import type { FitInput } from "../../core/results.ts";
import type { Assembled } from "./assemble.ts";

export const empty: Draft = { method: "fit", readings: {}, fields: {} };

const ENDS = ["window_lower_mm", "window_upper_mm"] as const;

interface FitAsk {
  payload: FitInput | null;
  missing: string;
}

/** The whole question: what was read, and what is wanted. */
export function toAsk(draft: Draft, { drive }: Stand, assembled: Assembled | null): FitAsk {
  const nothing = !drive || !assembled?.chains.length || !assembled.gears.length;
  if (nothing) return { payload: null, missing: "" };
  const window = new Reader(draft);
  readWindow(window);
  const heat = new Reader(draft);
  const hot = Boolean(draft.fields.block_material);
  if (hot) readHeating(heat, draft);
  const missing = window.missing || heat.missing;
  if (missing) return { payload: null, missing };
  const payload = {
    ...assembled.input,
    ...window.payload,
    ...(hot ? { heat: heat.payload } : {}),
  };
  return { payload: payload as unknown as FitInput, missing: "" };
}

/** Whether the window is the user's own. */
export function ownWindow(draft: Draft): boolean {
  return ENDS.some((end) => Boolean(draft.fields[end]));
}
