/** From the saved readings, the plan and what was typed to the question for the core. */
import { signal } from "@preact/signals";
import type { ForecastInput } from "../../core/results.ts";
import type { Plan, Reading } from "../../store/records.ts";
import { currentBuild, currentEngine, driveInput, settings } from "../../store/settings.ts";
import { builds, plans, readings } from "../../store/state.ts";
import { KM_PER_MILE } from "../../units/turned.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readOwnLimit, readWindow } from "../draft.ts";
import { placeOf, readingsOn } from "../last-reading.ts";
import { text as shared } from "../strings.ts";
import { text } from "./meta.ts";
import { type Listed, listed, sent } from "./pick.ts";
import { type OilKind, oilOf, planOf, speedOf, type Use, useOf } from "./plan.ts";

export const LIMITED = ["movement_mm", "crank_rock_deg", "elongation_percent"];
type Prior = NonNullable<ForecastInput["prior"]>;

/** What the service last told of the shop's other engines, and for which question it holds. */
export const prior = signal<{
  build: string | null;
  oil: string;
  pitch: number;
  prior: Prior;
} | null>(null);

/** The plan that goes with the build in hand. */
export function planHere(): Plan | null {
  const build = currentBuild.value?.id ?? null;
  return planOf(plans.value, currentEngine.value?.id ?? null, build);
}

/** The readings of the chain in hand; of the build in hand, if one is. */
export function readingsHere(stand: Stand): Reading[] {
  const build = currentBuild.value;
  return readingsOn(readings.value, placeOf(stand)).filter(
    (one) => build === null || one.build_id === build.id,
  );
}

export function listedHere(draft: Draft, stand: Stand): Listed[] {
  const { running } = settings.value;
  return listed(readingsHere(stand), draft.fields, builds.value, running);
}

/** The oil chosen, else the plan's; "" where it is not known. */
export function oilHere(draft: Draft): OilKind | "" {
  const chosen = draft.fields.oil_kind;
  if (chosen !== undefined && chosen !== "plan") return chosen as OilKind | "";
  return oilOf(planHere())?.kind ?? "";
}

/** The unit of the average speed goes with the unit of the running. */
export const inMiles = () => settings.value.running === "mi";

/** The use typed, else the plan's. */
export function useHere(draft: Draft): Use | null {
  const typed = (draft.fields.use ?? "").trim();
  if (typed === "") return useOf(planHere());
  const read = new Reader(draft).number("use", "number", text.use);
  if (read === undefined || read <= 0) return null;
  if (draft.fields.use_by === "hours") return { hours: read };
  return { km: inMiles() ? read * KM_PER_MILE : read };
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const reader = new Reader(draft);
  if (stand.drive) reader.payload.drive = driveInput(stand.drive, stand.chain, stand.gears);
  else reader.lack(shared.needsDrive);
  reader.payload.readings = sent(listedHere(draft, stand));
  const oil = oilHere(draft);
  if (oil) reader.payload.oil_kind = oil;
  const typed = reader.number("speed", "number", text.speed);
  const speed = typed === undefined ? speedOf(planHere()) : inMiles() ? typed * KM_PER_MILE : typed;
  if (speed !== null) reader.payload.average_speed_km_per_h = speed;
  readWindow(reader);
  const quantity = draft.fields.own_quantity ?? "";
  readOwnLimit(reader, draft, LIMITED.includes(quantity) ? quantity : (LIMITED[0] ?? ""));
  const known = prior.value;
  const same =
    known?.build === (currentBuild.value?.id ?? null) &&
    known.oil === oil &&
    known.pitch === stand.drive?.pitch_mm;
  if (known && same) reader.payload.prior = known.prior;
  return {
    calc: "forecast",
    payload: reader.done(),
    missing: reader.missing,
    of: ["chain", "gears"],
  };
}

/** The same question as the service takes it: it knows the shop's other engines itself. */
export function forService(payload: Ask["payload"]): ForecastInput | null {
  if (!payload) return null;
  const { prior: _prior, ...rest } = payload as ForecastInput;
  return rest as ForecastInput;
}
