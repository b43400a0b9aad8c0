/** Everything of a build in the order in which it happened. No screen here. */
import type { Build, Entry, Figure, Plan, Reading, Run, Session } from "../store/records.ts";
import { said as inWords } from "../words/told.ts";
import { text } from "./strings.ts";

export type Item =
  | { kind: "reading"; at: string; reading: Reading }
  /** Opens elsewhere than an entry does if it is told where. */
  | { kind: Entry["kind"]; at: string; entry: Entry; href?: string };

/** Entries, readings, plans and sessions of a build, oldest first. */
export function timeline(
  build: Build,
  entries: Entry[],
  readings: Reading[],
  plans: Plan[] = [],
  sessions: Session[] = [],
  runs: Run[] = [],
): Item[] {
  const items: Item[] = [];
  for (const entry of entries) {
    if (entry.build_id === build.id) items.push({ kind: entry.kind, at: entry.at, entry });
  }
  for (const reading of readings) {
    if (reading.build_id === build.id) {
      items.push({ kind: "reading", at: reading.taken_at, reading });
    }
  }
  for (const plan of plans) {
    if (plan.build_id !== build.id) continue;
    const entry = entryOf(plan, build);
    items.push({ kind: "plan", at: entry.at, entry, href: `#/plan/${plan.id}` });
  }
  for (const session of sessions) {
    if (session.build_id !== build.id) continue;
    const made = runs.filter((one) => one.session_id === session.id).length;
    const entry = sessionEntry(session, build, made);
    items.push({ kind: "session", at: entry.at, entry, href: `#/sessions/${session.id}` });
  }
  // Moments are compared as moments: one may be kept to the second, another to the millisecond.
  return items.sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || (idOf(a) < idOf(b) ? -1 : 1));
}

/** A plan of running in as the record shows it: what was read beside the engine, and what was said. */
function entryOf(plan: Plan, build: Build): Entry {
  const figures: Figure[] = [];
  const said: string[] = [];
  for (const one of plan.log) {
    if (one.kind === "value" && one.label && typeof one.value_read === "number") {
      figures.push({ label: one.label, value: one.value_read, unit: one.unit ?? null });
    }
    if (one.text) said.push(one.kind === "clock" ? inWords(one.text) : one.text);
  }
  return {
    id: plan.id,
    build_id: build.id,
    kind: "plan",
    at: plan.started_at ?? plan.created_at,
    title: plan.label,
    text: said.join("\n") || null,
    figures,
    chain_id: null,
    gear_set_id: null,
    created_at: plan.created_at,
  };
}

/** A dyno session as the record shows it: how many runs, and what was compared. */
function sessionEntry(session: Session, build: Build, made: number): Entry {
  const compared = session.settings.map(({ key, label }) => `${key}: ${label}`);
  return {
    id: session.id,
    build_id: build.id,
    kind: "session",
    at: session.at,
    title: session.label,
    text: [...compared, session.note ?? ""].filter(Boolean).join("\n") || null,
    figures: [{ label: text.runs, value: made, unit: null }],
    chain_id: null,
    gear_set_id: null,
    created_at: session.created_at,
  };
}

export function idOf(item: Item): string {
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

/**
 * Readings of the engine that are in no build, taken before this one was started and after the last
 * thing of the builds before it; the newest first. What is kept of a reading is never changed, so
 * they cannot be brought into the build: they are shown beside it.
 */
export function takenBefore(
  build: Pick<Build, "engine_id" | "started_at">,
  moments: string[],
  readings: Reading[],
): Reading[] {
  const start = Date.parse(build.started_at);
  const ended = Math.max(...moments.map(Date.parse).filter((at) => at < start));
  return readings
    .filter(({ build_id, engine_id, taken_at }) => {
      const at = Date.parse(taken_at);
      return !build_id && engine_id === build.engine_id && at > ended && at < start;
    })
    .sort((a, b) => Date.parse(b.taken_at) - Date.parse(a.taken_at));
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
