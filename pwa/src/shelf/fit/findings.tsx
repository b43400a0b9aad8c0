import type { FitResult } from "../../core/results.ts";
import type { Chain, GearSet } from "../../store/records.ts";
import { whenText } from "../../units/when.ts";
import { inOrder, short, tagged } from "../tag.ts";
import type { Assembled } from "./assemble.ts";
import { text } from "./strings.ts";
import { chanceText, farthest, type Table, untried } from "./table.ts";

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

function Agreement({ result: { consistency }, table, assembled }: Props) {
  const { probability, degrees_of_freedom: spare, consistent } = consistency;
  const odd = consistent ? null : farthest(assembled, table);
  const pair = odd && table.at(odd.chain_id ?? "", odd.gear_set_id ?? "");
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
      {odd && pair && (
        <p>
          {text.worst}{" "}
          <a href={`#/saved/${odd.id}`}>
            {tagged(pair.chain)} on {tagged(pair.gears)}, {whenText(odd.taken_at)}
          </a>
        </p>
      )}
    </section>
  );
}
