/** How the slack of a block with moved shafts is shown. */
import type { BoredResult } from "../../core/results.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { lengthTo, numberTo } from "../../result/quantity.ts";
import { Rests } from "../../result/reasons.tsx";
import type { ShownProps, Shows } from "../../result/shows.ts";
import {
  EXCESS_DECIMALS,
  slackGlance,
  tradeWindow,
  WINDOW_DECIMALS,
} from "../../result/slack-glance.ts";
import { text as shared } from "../../result/strings.ts";
import { fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { text as units } from "../../units/strings.ts";
import { BoredPicture } from "./bored-picture.tsx";
import { TwoStates } from "./two-states.tsx";
import { boredWords as words } from "./words.ts";

type Props = ShownProps<BoredResult>;

function Reasons({ result, length }: Props) {
  const { before, after, excess_change_mm, chain_needed: needed } = result;
  const by = after.centre_distance_mm - before.centre_distance_mm;
  const exact = (mm: number) => lengthTo(mm, length, EXCESS_DECIMALS);
  const signed = (mm: number) => (mm < 0 ? exact(mm) : `+${exact(mm)}`);
  const window = units.range(
    numberTo(needed.window_lower_mm, length, WINDOW_DECIMALS),
    lengthTo(needed.window_upper_mm, length, WINDOW_DECIMALS),
  );
  return (
    <>
      <section class="panel reasons">
        <p class="next">
          <strong>{shared.next}</strong> {words.needed(amount(needed, length), window)}{" "}
          <OriginBadge origin={needed.origin} />
        </p>
        <p>
          {words.bench(
            signedPercent(needed.elongation_low_percent),
            signedPercent(needed.elongation_high_percent),
          )}
        </p>
        <p>
          <strong>{shared.why}</strong>{" "}
          {words.centre(
            exact(before.centre_distance_mm),
            exact(after.centre_distance_mm),
            signed(by),
          )}{" "}
          <span class="num">{signed(excess_change_mm)}</span>.
        </p>
        {tradeWindow && <Rests limit={tradeWindow} />}
      </section>
      <Notes result={result} />
    </>
  );
}

/** How much shorter or longer the chain must be, in words. */
function amount(needed: BoredResult["chain_needed"], length: LengthUnit): string {
  const { length_change_low_mm: low, length_change_high_mm: high } = needed;
  const size = (mm: number) => lengthTo(Math.abs(mm), length, 2);
  const plain = (mm: number) => numberTo(Math.abs(mm), length, 2);
  if (high < 0) return words.shorter(plain(high), size(low));
  if (low > 0) return words.longer(plain(low), size(high));
  return words.around(size(low), size(high));
}

function signedPercent(value: number): string {
  const written = fixed(value, 3);
  return value > 0 ? `+${written}` : written;
}

function Details({ result, length }: Props) {
  return (
    <>
      <TwoStates
        title={words.both}
        heads={[words.wasRow, words.nowRow]}
        before={result.before}
        after={result.after}
        length={length}
      />
      <Assumed result={result} />
    </>
  );
}

export const boredShown: Shows<BoredResult> = {
  glance: ({ before, after }, length) =>
    slackGlance(after, before, length, { ...words, figure: "bored_movement_mm" }),
  Reasons,
  Pictures: BoredPicture,
  Details,
};
