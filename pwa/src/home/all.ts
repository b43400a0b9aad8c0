/** Everything on this phone that can be gone to, for finding it by a word. */
import { computed, effect, signal } from "@preact/signals";
import type { shownOf } from "../benches/shown.ts";
import { asRead } from "../core/as-read.ts";
import { withUnit } from "../result/quantity.ts";
import { tagged } from "../shelf/tag.ts";
import type { Reading } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import {
  builds,
  chains,
  engines,
  entries,
  gearSets,
  plans,
  readings,
  sessions,
} from "../store/state.ts";
import { whenText } from "../units/when.ts";
import { nameText } from "../words/own.ts";
import type { Findable } from "./find.ts";
import { text } from "./strings.ts";

const { kinds } = text;
const words = (...some: (string | null | undefined)[]) => some.filter(Boolean).join(" ");

/** How results are shown is a large part of the app: it is loaded once there is a result. */
const shown = signal<typeof shownOf | null>(null);

export async function loadShown(): Promise<void> {
  if (readings.value.length === 0) return;
  // Where it cannot be had, the lines stay empty until a reading is kept.
  const found = await import("../benches/shown.ts").catch(() => null);
  if (found) shown.value = found.shownOf;
}

effect(() => void loadShown());

/** A reading in a line: what it is, its number, what was said of it; nothing before that is loaded. */
export function readingLine({ calc, result, input }: Reading): string {
  if (!shown.value) return "";
  const at = shown.value(calc).glance(asRead(result, input), unitOf("readings_mm"));
  return `${at.what} ${withUnit(at.number, at.unit)}, ${at.word}`;
}

/** The records, newest first within each kind. */
export const records = computed<Findable[]>(() => {
  const nameOf = new Map(engines.value.map(({ id, name }) => [id, name]));
  const named = (id: string | null | undefined) => (id ? nameOf.get(id) : undefined);
  const newest = [...readings.value].sort((a, b) => b.taken_at.localeCompare(a.taken_at));
  return [
    ...engines.value.map((one) => ({
      kind: kinds.engine,
      name: one.name,
      words: words(one.note),
      href: "#/drive",
    })),
    ...builds.value.map((one) => ({
      kind: kinds.build,
      name: one.label,
      words: words(named(one.engine_id), one.note),
      href: `#/builds/${one.id}`,
    })),
    ...chains.value.map((one) => ({
      kind: kinds.chain,
      name: tagged(one),
      words: words(one.note, one.description),
      href: `#/shelf/chain/${one.id}`,
    })),
    ...gearSets.value.map((one) => ({
      kind: kinds.gears,
      name: tagged(one),
      words: words(one.note),
      href: `#/shelf/gears/${one.id}`,
    })),
    ...plans.value.map((one) => ({
      kind: kinds.plan,
      name: nameText(one.label),
      words: words(named(one.engine_id)),
      href: `#/plan/${one.id}`,
    })),
    ...sessions.value.map((one) => ({
      kind: kinds.session,
      name: one.label,
      words: words(named(one.engine_id), one.note, ...one.settings.map(({ label }) => label)),
      href: `#/sessions/${one.id}`,
    })),
    ...entries.value.map((one) => ({
      kind: kinds.entry,
      name: nameText(one.title),
      words: words(one.text),
      href: `#/builds/${one.build_id}`,
    })),
    ...newest.map((one) => ({
      kind: kinds.reading,
      name: readingLine(one),
      words: words(named(one.engine_id), whenText(one.taken_at), one.note),
      href: `#/saved/${one.id}`,
    })),
  ];
});
