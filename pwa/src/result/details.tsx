import type { BenchResult } from "../core/results.ts";
import type { LengthUnit } from "../units/parse.ts";
import { Limits } from "./limits.tsx";
import { Assumed, Budget } from "./notes.tsx";
import { StateTable } from "./state-table.tsx";

/** What stands behind the verdict, in the order in which it is wanted. */
export function Details({ result, length }: { result: BenchResult; length: LengthUnit }) {
  return (
    <>
      {result.state && (
        <StateTable state={result.state} measured={result.measured.quantity} length={length} />
      )}
      <Limits result={result} length={length} />
      <Budget measured={result.measured} length={length} />
      <Assumed result={result} />
    </>
  );
}
