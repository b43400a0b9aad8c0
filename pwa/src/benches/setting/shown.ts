/** How true TDC, a cam's position and an adjuster's step are shown: at a glance here, the rest later. */
import type { AdjustResult, CamResult, SettingResult, TdcResult } from "../../core/results.ts";
import { labelOf } from "../../core/terms.ts";
import type { Glance } from "../../result/glance.ts";
import { show } from "../../result/quantity.ts";
import type { Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { toneOf } from "../../result/tone.tsx";
import { later } from "../../shell/later.tsx";
import { fixed } from "../../units/format.ts";
import { text } from "./strings.ts";

const below = () => import("./below.tsx");

type Number = Pick<Glance, "figure" | "what" | "number" | "side" | "under">;

const signed = (value: number, decimals: number) =>
  `${value > 0 ? "+" : ""}${fixed(value, decimals)}`;

function measured({ measured }: TdcResult | CamResult): Number {
  const { quantity, value, expanded_uncertainty, count } = measured;
  const at = show(quantity, value, expanded_uncertainty, "mm");
  return {
    figure: quantity,
    what: `${labelOf(quantity)}, ${shared.of(count)}`,
    number: at.value,
    side: `± ${at.plusMinus}`,
    under: "",
  };
}

function numberOf(result: SettingResult): Number {
  if (result.calc === "tdc") {
    return { ...measured(result), under: correctionOf(result) };
  }
  if (result.calc === "cam") return measured(result);
  return moveOf(result);
}

/** What to add to a reading; one taken before zero, or on a falling scale, counts the other way. */
function correctionOf({ wheel, correction_deg }: TdcResult): string {
  const added = `${signed(correction_deg, 2)}°`;
  const other = `${signed(-correction_deg, 2)}°`;
  if (wheel === "both-ways") return text.sides(added, other);
  return text.every(wheel === "0-360-down" ? other : added);
}

function moveOf({ options, wanted_crank_deg }: AdjustResult): Number {
  const move = options[0]?.move_crank_deg ?? 0;
  return {
    figure: "move_crank_deg",
    what: labelOf("move_crank_deg"),
    number: signed(move, 1),
    side: text.ofWanted(signed(wanted_crank_deg, 1)),
    under: text.camDegrees(signed(move / 2, 1)),
  };
}

export const settingShown: Shows<SettingResult> = {
  glance: (result) => {
    const { outcome, headline } = result.verdict;
    return {
      ...numberOf(result),
      unit: "°",
      tone: toneOf(outcome),
      outcome,
      word: shared.outcomes[outcome],
      headline,
      scale: null,
      limit: null,
    };
  },
  Reasons: later(async () => (await below()).Reasons),
  Pictures: later(async () => (await below()).Pictures),
  Details: later(async () => (await below()).Details),
};
