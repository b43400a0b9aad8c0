/** The form of a build: from what was typed to a build, or to what is still missing. */

import type { Typed } from "../shelf/use-draft.ts";
import type { Build, Chain, Drive, Engine, GearSet } from "../store/records.ts";
import { type DistanceUnit, parseDistance } from "../units/distance.ts";
import { localText, momentOf } from "../units/local-time.ts";
import { text } from "./strings.ts";

export interface Stand {
  engine: Engine | null;
  drive: Drive | null;
  chain: Chain | null;
  gears: GearSet | null;
}

type Fields = Omit<Build, "id" | "created_at">;

/** A build as text; a new one starts with what is on the bench. */
export function draftOfBuild(build: Build | null, stand: Stand): Typed {
  const km = build?.odometer_km;
  return {
    label: build?.label ?? "",
    started_at: localText(build?.started_at),
    odometer: typeof km === "number" ? `${km} km` : "",
    chain_id: (build ? build.chain_id : stand.chain?.id) ?? "",
    gear_set_id: (build ? build.gear_set_id : stand.gears?.id) ?? "",
    note: build?.note ?? "",
  };
}

/** The build typed; left empty, it was started `now`. */
export function buildOf(
  draft: Typed,
  build: Build | null,
  stand: Stand,
  distance: DistanceUnit,
  now: string,
): Fields | { missing: string } {
  const typed = (field: string) => (draft[field] ?? "").trim();
  const engine_id = build?.engine_id ?? stand.engine?.id;
  if (!engine_id) return { missing: text.needsEngine };
  if (typed("label") === "") return { missing: text.needsLabel };
  const at = typed("started_at");
  const started_at = at ? momentOf(at, build?.started_at) : (build?.started_at ?? now);
  if (started_at === null) return { missing: text.needsTime };
  const run = typed("odometer") ? parseDistance(typed("odometer"), distance) : null;
  if (run && !run.ok) return { missing: text.needsDistance };
  return {
    engine_id,
    drive_id: (build ? build.drive_id : stand.drive?.id) ?? null,
    chain_id: typed("chain_id") || null,
    gear_set_id: typed("gear_set_id") || null,
    label: typed("label"),
    started_at,
    odometer_km: run ? run.km : null,
    note: typed("note") || null,
  };
}
