/** Every run as read and as corrected, by the core. */
import { useEffect, useState } from "preact/hooks";
import { asRead } from "../core/as-read.ts";
import { run as ask } from "../core/client.ts";
import type { CorrectionResult } from "../core/results.ts";
import type { Run } from "../store/records.ts";
import { airOfRun } from "./air.ts";

/** What the core's calculation is asked about a kept run; null if its air is not known. */
function questionOf(run: Run) {
  if (!run.conditions) return null;
  const { power_kw, torque_nm } = run.peaks;
  return {
    conditions: airOfRun(run.conditions),
    figures_are: run.figures_are,
    ...(typeof power_kw === "number" ? { power_kw } : {}),
    ...(typeof torque_nm === "number" ? { torque_nm } : {}),
  };
}

/** Answers by run. A kept run never changes, so each is asked about once. */
export function useCorrections(runs: Run[]): Map<string, CorrectionResult> {
  const [found, setFound] = useState(new Map<string, CorrectionResult>());
  const ids = runs.map((one) => one.id).join(" ");
  useEffect(() => {
    let left = false;
    void (async () => {
      for (const one of runs) {
        const question = found.has(one.id) ? null : questionOf(one);
        if (!question || left) continue;
        const answer = await ask("correction", question);
        if (!left && answer.ok)
          setFound((now) => new Map(now).set(one.id, asRead(answer.result, question)));
      }
    })().catch(() => {}); // the shell says on every screen why the core cannot run
    return () => {
      left = true;
    };
  }, [ids]);
  return found;
}
