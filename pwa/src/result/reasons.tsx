import type { BenchResult, ClearanceResult, GearResult, Limit } from "../core/results.ts";
import { Notes } from "./notes.tsx";
import { OriginBadge, Source } from "./origin.tsx";
import { text } from "./strings.ts";

/** Why the verdict is what it is, what to do next, the limit it rests on, what to mind. */
export function Reasons({ result }: { result: BenchResult | GearResult | ClearanceResult }) {
  const { why, next_step, limit } = result.verdict;
  return (
    <>
      <section class="panel reasons">
        <p class="next">
          <strong>{text.next}</strong> {next_step}
        </p>
        <p>
          <strong>{text.why}</strong> {why}
        </p>
        {limit ? <Rests limit={limit} /> : <p>{text.restsOnNone}</p>}
      </section>
      <Notes result={result} />
    </>
  );
}

export function Rests({ limit }: { limit: Limit }) {
  return (
    <p class="rests">
      <strong>{text.rests}</strong> {limit.label} <OriginBadge origin={limit.origin} />{" "}
      <Source source={limit.source} address={limit.address} />
      {limit.note && <span class="small"> {limit.note}</span>}
    </p>
  );
}
