import type { FitResult } from "../../core/results.ts";
import type { Chain, GearSet, Reading } from "../../store/records.ts";
import { whenText } from "../../units/when.ts";
import { inOrder, short, tagged } from "../tag.ts";
import type { Assembled } from "./assemble.ts";
import { text } from "./strings.ts";
import { chanceText, readingAt, type Table, untried } from "./table.ts";

interface Props {
  result: FitResult;
  table: Table;
  assembled: Assembled;
}

/** What the readings do not say, and whether they agree. */
export function Findings(props: Props) {
  return (
    <>
      <NotKnown {...props} />
      <Agreement {...props} />
    </>
  );
}

function NotKnown({ result, table, assembled }: Props) {
  const missing = table.undetermined.length;
  if (missing === 0) return null;
  const all = new Map<string, Chain | GearSet>(
    [...assembled.chains, ...assembled.gears].map((one) => [one.id, one]),
  );
  const names = (ids: string[]) =>
    ids.flatMap((id) => {
      const one = all.get(id);
      return one ? [tagged(one)] : [];
    });
  const alone = inOrder(untried(result, assembled)).map(short);
  return (
    <section class="panel">
      <h2>{text.undetermined}</h2>
      <p>{text.undeterminedCount(missing, missing + table.ranked.length)}</p>
      {alone.length > 0 && <p>{text.untried(alone)}</p>}
      {result.groups.length > 1 && (
        <>
          <p>{text.groups}</p>
          <ul class="plain-list">
            {result.groups.map((one) => (
              <li key={[...one.chains, ...one.gear_sets].join(" ")}>
                {text.group(names(one.chains), names(one.gear_sets))}
                {one.anchored && <span class="small"> ({text.anchored})</span>}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Agreement({ result: { consistency, suspects }, table, assembled }: Props) {
  const { probability, degrees_of_freedom: spare, consistent } = consistency;
  return (
    <section class={consistent ? "panel" : "panel warnings"}>
      <h2>{text.agree}</h2>
      {probability === null ? (
        <p>{text.agreeNone}</p>
      ) : consistent ? (
        <p>{text.agreeYes(chanceText(probability), spare)}</p>
      ) : (
        <p>{text.agreeNo(chanceText(probability))}</p>
      )}
      {!consistent && suspects.length === 0 && <p>{text.noSuspect}</p>}
      {suspects.length > 0 && (
        <>
          <p>{suspects.length === 1 ? text.oneSuspect : text.suspects(suspects.length)}</p>
          <ul class="plain-list">
            {suspects.map((one) => (
              <li key={one.field}>
                <Culprit reading={readingAt(assembled, one.field)} table={table} />{" "}
                <span class="num">{text.without(chanceText(one.probability))}</span>{" "}
                {one.cause?.text}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** One reading that would explain it, by its parts and its day; or the centre distance. */
function Culprit({ reading, table }: { reading: Reading | null; table: Table }) {
  if (!reading) return <>{text.centreDistance}</>;
  const parts = [...table.ranked, ...table.undetermined];
  const chain = parts.find((one) => one.chain.id === reading.chain_id)?.chain;
  const gears = parts.find((one) => one.gears.id === reading.gear_set_id)?.gears;
  const of = [chain, gears].flatMap((one) => (one ? [tagged(one)] : []));
  return (
    <a href={`#/saved/${reading.id}`}>
      {of.join(` ${text.onWord} `)}, {whenText(reading.taken_at)}
    </a>
  );
}
