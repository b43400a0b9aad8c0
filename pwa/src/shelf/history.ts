/** What the saved readings say of each part: its trial fits, bench lengths and measurements. */
import type { Chain, GearSet, Reading } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { readings } from "../store/state.ts";
import { lengthText } from "../units/format.ts";
import { text } from "./strings.ts";

const newest = (list: Reading[]) => [...list].sort((a, b) => b.taken_at.localeCompare(a.taken_at));

export function benchLengthsOf(chain: Chain): Reading[] {
  return newest(
    readings.value.filter((one) => one.chain_id === chain.id && one.calc === "elongation"),
  );
}

/** A slack reading with a chain and a gear set is a trial fit of the two. */
export function trialsOf(part: { id: string }): Reading[] {
  return newest(
    readings.value.filter(
      (one) =>
        one.calc === "slack" &&
        one.chain_id &&
        one.gear_set_id &&
        (one.chain_id === part.id || one.gear_set_id === part.id),
    ),
  );
}

export function measurementsOf(gears: GearSet): Reading[] {
  return newest(
    readings.value.filter((one) => one.gear_set_id === gears.id && one.calc === "gear"),
  );
}

const pitchText = (mm: number) => lengthText(mm, unitOf("pitch_mm"));

export function chainSize(chain: Chain): string {
  return text.linksOf(chain.links, pitchText(chain.pitch_mm));
}

export function gearsSize(gears: Pick<GearSet, "crank_teeth" | "cam_teeth" | "pitch_mm">): string {
  return text.teethOf(gears.crank_teeth, gears.cam_teeth, pitchText(gears.pitch_mm));
}

/** The size of a part and how often it was read, as far as it was. */
function summary(size: string, ...counts: [words: (count: number) => string, list: Reading[]][]) {
  const read = counts.filter(([, list]) => list.length > 0);
  const told = read.map(([words, list]) => words(list.length));
  return [size, ...(told.length > 0 ? told : [text.notRead])].join(" · ");
}

export function chainSummary(chain: Chain): string {
  const [lengths, trials] = [benchLengthsOf(chain), trialsOf(chain)];
  return summary(chainSize(chain), [text.lengths, lengths], [text.tries, trials]);
}

export function gearsSummary(gears: GearSet): string {
  const [measured, trials] = [measurementsOf(gears), trialsOf(gears)];
  return summary(gearsSize(gears), [text.measures, measured], [text.tries, trials]);
}
