/** Everything of a build in the order in which it happened. No screen here. */
import type { Build, Entry, Plan, Reading } from "../store/records.ts";

export type Item =
  | { kind: "reading"; at: string; reading: Reading }
  | { kind: "running"; at: string; plan: Plan }
  | { kind: Entry["kind"]; at: string; entry: Entry };

/** Entries, readings and plans of running in of a build, oldest first. */
export function timeline(
  build: Build,
  entries: Entry[],
  readings: Reading[],
  plans: Plan[],
): Item[] {
  const items: Item[] = [];
  for (const plan of plans) {
    const at = plan.started_at ?? plan.created_at;
    if (plan.build_id === build.id) items.push({ kind: "running", at, plan });
  }
  for (const entry of entries) {
    if (entry.build_id === build.id) items.push({ kind: entry.kind, at: entry.at, entry });
  }
  for (const reading of readings) {
    if (reading.build_id === build.id) {
      items.push({ kind: "reading", at: reading.taken_at, reading });
    }
  }
  // Moments are compared as moments: one may be kept to the second, another to the millisecond.
  return items.sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || (idOf(a) < idOf(b) ? -1 : 1));
}

export function idOf(item: Item): string {
  if (item.kind === "running") return item.plan.id;
  return item.kind === "reading" ? item.reading.id : item.entry.id;
}

/** The last reading of each kind; each gear counts for itself. */
export function latest(items: Item[]): Reading[] {
  const found = new Map<string, Reading>();
  for (const item of items) {
    if (item.kind !== "reading") continue;
    const { calc, input } = item.reading;
    found.set(`${calc} ${"gear" in input ? input.gear : ""}`, item.reading);
  }
  return [...found.values()];
}

/** The items in whose words every typed word is found. */
export function search(items: Item[], typed: string, wordsOf: (item: Item) => string): Item[] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return items;
  return items.filter((item) => {
    const words = wordsOf(item).toLowerCase();
    return wanted.every((one) => words.includes(one));
  });
}

/** Builds of an engine, newest first. */
export function buildsOf(engineId: string, builds: Build[]): Build[] {
  return builds
    .filter((one) => one.engine_id === engineId)
    .sort((a, b) => Date.parse(b.started_at) - Date.parse(a.started_at));
}
