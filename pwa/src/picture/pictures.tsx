import { useMemo } from "preact/hooks";
import { useLatest } from "../core/latest.ts";
import type { BenchResult, State } from "../core/results.ts";
import type { PicturesProps } from "../result/shows.ts";
import { Chart } from "./chart.tsx";
import { DriveDrawing } from "./drive-drawing.tsx";

const CURVE_POINTS = 120;

type Props = Pick<PicturesProps<BenchResult>, "drive" | "result" | "length">;

/** The drawing and the chart of a drive; nothing without one. */
export function Pictures({ drive, result, length }: Props) {
  const answer = useLatest("drive", drive && { drive, curve_points: CURVE_POINTS });
  const shape = answer?.ok ? answer.result : null;
  const curve = useMemo(() => shape?.curve ?? [], [shape]);
  if (!drive || !shape) return null;
  const state = result?.state;
  return (
    <>
      <DriveDrawing
        drive={drive}
        shape={shape}
        movement={state ? Math.max(0, state.movement_mm.value) : null}
        length={length}
      />
      {state && (
        <Chart curve={curve} result={result as BenchResult & { state: State }} length={length} />
      )}
    </>
  );
}
