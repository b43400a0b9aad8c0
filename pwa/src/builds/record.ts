/** A build and what was read before it, out of what the phone keeps. */
import type { Build, Reading } from "../store/records.ts";
import { builds, entries, plans, readings, runs, sessions } from "../store/state.ts";
import { buildsOf, type Item, takenBefore, timeline } from "./timeline.ts";

/** Everything of a build, oldest first. */
export function itemsOf(build: Build): Item[] {
  return timeline(build, entries.value, readings.value, plans.value, sessions.value, runs.value);
}

/** Readings between the engine's builds, before this one, the newest first. */
export function readingsBefore(build: Pick<Build, "engine_id" | "started_at">): Reading[] {
  const others = buildsOf(build.engine_id, builds.value);
  const moments = others.flatMap((one) => [one.started_at, ...itemsOf(one).map(({ at }) => at)]);
  return takenBefore(build, moments, readings.value);
}
