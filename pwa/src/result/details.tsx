import type { BenchResult } from "../core/results.ts";
import type { LengthUnit } from "../units/parse.ts";
import { Limits } from "./limits.tsx";
import { Budget, Notes } from "./notes.tsx";
import { Reasons } from "./reasons.tsx";
import { StateTable } from "./state-table.tsx";

/** Everything under the number, in the order in which it is wanted. */
export function Details({ result, length }: { result: BenchResult; length: LengthUnit }) {
  return (
    <>
      <Reasons result={result} />
      <Notes result={result} />
      <StateTable result={result} length={length} />
      <Limits result={result} length={length} />
      <Budget result={result} length={length} />
    </>
  );
}
