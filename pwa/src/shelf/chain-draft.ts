/** The chain form: from what was typed to a chain, or to what is still missing. */
import type { Chain, Drive } from "../store/records.ts";
import { type DistanceUnit, exactDistance, parseDistance } from "../units/distance.ts";
import { exactLength } from "../units/format.ts";
import { type LengthUnit, parseCount, parseLength } from "../units/parse.ts";
import { text } from "./strings.ts";
import { tidyTag } from "./tag.ts";
import type { Typed } from "./use-draft.ts";

export interface Units {
  length: LengthUnit;
  distance: DistanceUnit;
}

type Fields = Omit<Chain, "id" | "created_at">;

/** A chain as text; a new one starts with the size that the drive at hand takes. */
export function draftOfChain(
  chain: Chain | null,
  drive: Drive | null,
  tag: string,
  units: Units,
): Typed {
  const size = chain ?? drive;
  return {
    label: chain?.label ?? "",
    tag: chain?.tag ?? tag,
    pitch_mm: size ? exactLength(size.pitch_mm, units.length) : "",
    links: size ? String(size.links) : "",
    roller_diameter_mm: size?.roller_diameter_mm
      ? exactLength(size.roller_diameter_mm, units.length)
      : "",
    distance:
      typeof chain?.distance_run_km === "number"
        ? exactDistance(chain.distance_run_km, units.distance)
        : "",
    description: chain?.description ?? "",
    note: chain?.note ?? "",
    engine_id: chain?.engine_id ?? "",
  };
}

/** The chain typed, or the words for what is missing or cannot be read. */
export function chainOf(draft: Typed, units: Units): Fields | { missing: string } {
  const typed = (field: string) => (draft[field] ?? "").trim();
  if (typed("label") === "") return { missing: text.needsLabel };
  const pitch = parseLength(typed("pitch_mm"), units.length);
  if (!pitch.ok) return { missing: text.needs(text.pitch) };
  const links = parseCount(typed("links"));
  if (!links.ok) return { missing: text.needs(text.links) };
  const roller = typed("roller_diameter_mm")
    ? parseLength(typed("roller_diameter_mm"), units.length)
    : null;
  if (roller && !roller.ok) return { missing: text.needs(text.roller) };
  const run = typed("distance") ? parseDistance(typed("distance"), units.distance) : null;
  if (run && !run.ok) return { missing: text.needs(text.distance) };
  return {
    label: typed("label"),
    tag: tidyTag(typed("tag")),
    pitch_mm: pitch.mm,
    links: links.value,
    roller_diameter_mm: roller ? roller.mm : null,
    distance_run_km: run ? run.km : null,
    description: typed("description") || null,
    note: typed("note") || null,
    engine_id: typed("engine_id") || null,
  };
}
