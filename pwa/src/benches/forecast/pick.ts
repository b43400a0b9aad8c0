/** Which saved readings a forecast rests on, and how far the chain had run at each. */
import type { Build, Reading } from "../../store/records.ts";
import { parseRunning, type Ran, type RunningUnit } from "../../units/running.ts";
import { UNCERTAINTY } from "../combined/meta.ts";
import { type Candidate, candidateOf } from "../combined/pick.ts";
import { ranOf } from "../running.ts";

/** As many as the core takes. */
const MOST = 50;

export interface Listed extends Candidate {
  /** As it was noted with the reading, or as it was typed here; null while neither is. */
  ran: Ran | null;
  /** What was noted stays: only what was not can be typed here. */
  noted: boolean;
  out: boolean;
}

export const outField = (id: string) => `out:${id}`;
export const ranField = (id: string) => `ran:${id}`;

/** The readings on offer, oldest first, each with its running and whether it is left out. */
export function listed(
  newestFirst: Reading[],
  fields: Record<string, string>,
  builds: Build[],
  unit: RunningUnit,
): Listed[] {
  return newestFirst
    .flatMap((reading) => {
      const found = candidateOf(reading);
      if (!found || !(found.uncertainty > 0)) return [];
      const noted = ranOf(reading, builds);
      const typed = parseRunning(fields[ranField(reading.id)] ?? "", unit);
      return [
        {
          ...found,
          ran: noted ?? (typed.ok ? typed.ran : null),
          noted: noted !== null,
          out: fields[outField(reading.id)] === "yes",
        },
      ];
    })
    .slice(0, MOST)
    .reverse();
}

/** Those that the forecast rests on, as the core takes them. */
export function sent(all: Listed[]): Record<string, unknown>[] {
  return all.flatMap(({ quantity, value, uncertainty, ran, out }) => {
    if (out || !ran) return [];
    const when =
      "hours" in ran ? { running_since_start_h: ran.hours } : { distance_since_start_km: ran.km };
    return [{ quantity, [quantity]: value, [UNCERTAINTY[quantity]]: uncertainty, ...when }];
  });
}
