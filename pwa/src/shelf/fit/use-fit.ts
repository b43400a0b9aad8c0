import { useMemo } from "preact/hooks";
import type { FormProps } from "../../benches/bench.ts";
import { useKeptDraft } from "../../benches/use-kept-draft.ts";
import { useLatest } from "../../core/latest.ts";
import type { FitResult, Problem } from "../../core/results.ts";
import {
  chainsHere,
  currentDrive,
  currentEngine,
  driveInput,
  gearSetsHere,
} from "../../store/settings.ts";
import { readings } from "../../store/state.ts";
import { empty, toAsk } from "./ask.ts";
import { type Assembled, assemble } from "./assemble.ts";

export interface OnFit extends FormProps {
  assembled: Assembled | null;
  result: FitResult | null;
  problems: Problem[];
  missing: string;
  leftOut: ReadonlySet<string>;
  /** Takes a reading into the table, or leaves it out. */
  use(readingId: string, used: boolean): void;
}

/** Everything the fit table needs: what is wanted, kept by engine, and the live answer. */
export function useFit(): OnFit | null {
  const name = `fit:${currentEngine.value?.id ?? ""}`;
  const { draft, change } = useKeptDraft(name, empty);
  const drive = currentDrive.value;
  const left = draft?.fields.left_out ?? "";
  const [chains, gears, all] = [chainsHere.value, gearSetsHere.value, readings.value];
  const assembled = useMemo(() => {
    const leftOut = new Set(left.split(" ").filter(Boolean));
    return (
      drive && assemble({ drive: driveInput(drive, null), chains, gears, readings: all, leftOut })
    );
  }, [drive, chains, gears, all, left]);
  const stand = { drive, chain: null, gears: null };
  const ask = draft ? toAsk(draft, stand, assembled) : null;
  const answer = useLatest("fit", ask?.payload ?? null);
  if (!draft || !ask) return null;
  const leftOut = new Set(left.split(" ").filter(Boolean));
  const problems = answer && !answer.ok ? answer.problems : [];
  const result = answer?.ok ? answer.result : null;
  return {
    draft,
    stand,
    assembled,
    result,
    problems,
    missing: ask.missing,
    leftOut,
    change,
    problemAt: (field) =>
      problems.find((one) => one.field === field || one.field === `heat.${field}`),
    assumed: (field) => result?.assumptions.find((one) => one.field === field),
    use: (id, used) => {
      if (used) leftOut.delete(id);
      else leftOut.add(id);
      change({ fields: { left_out: [...leftOut].join(" ") } });
    },
  };
}
