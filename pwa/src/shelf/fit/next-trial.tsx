import type { FitResult } from "../../core/results.ts";
import { go } from "../../shell/router.ts";
import type { Chain, GearSet } from "../../store/records.ts";
import { chooseChain, chooseGearSet } from "../../store/settings.ts";
import { tagged } from "../tag.ts";
import type { Assembled } from "./assemble.ts";
import { text } from "./strings.ts";
import { chanceText, type Table } from "./table.ts";

/** How many of the best the core looks at when it picks the next trial. */
const BEST_FEW = 10;

/** Opens the Slack bench with both on it; what is saved there is the trial. */
export function measurePair(chain: Chain, gears: GearSet): void {
  chooseChain(chain.id);
  chooseGearSet(gears.id);
  go("slack");
}

interface Props {
  result: FitResult;
  table: Table;
  assembled: Assembled;
}

/** The one trial fit that would tell the most: the main thing to do here. */
export function NextTrial({ result, table, assembled }: Props) {
  const next = result.next_trial;
  const pair = next && table.at(next.chain, next.gear_set);
  if (!next || !pair) return null;
  const few = Math.min(BEST_FEW, table.ranked.length);
  const why =
    next.share !== null
      ? text.nextNarrows(chanceText(next.share), text.bestFew(few))
      : assembled.trials.length === 0
        ? text.nextFirst
        : text.nextTies;
  return (
    <section class="panel fit-next" aria-label={text.next}>
      <h2>{text.next}</h2>
      <p class="fit-pair">
        <strong>{tagged(pair.chain)}</strong>
        <span>{text.onWord}</span>
        <strong>{tagged(pair.gears)}</strong>
      </p>
      <p>
        {pair.trials.length > 0 && text.nextAgain} {why}
      </p>
      <button
        type="button"
        class="button button-main"
        onClick={() => measurePair(pair.chain, pair.gears)}
      >
        {text.nextDo}
      </button>
    </section>
  );
}
