/** Names and meanings of the core's quantities, from its own glossary. */

import { labels } from "virtual:glossary";
import { signal } from "@preact/signals";
import { dispatch } from "./client.ts";
import type { Term } from "./results.ts";

export { defaults, limits, materials, version as coreVersion } from "virtual:glossary";

/** The screen's name of a field of the core. */
export function labelOf(field: string): string {
  const bare =
    field
      .replace(/\[\d+\]$/, "")
      .split(".")
      .at(-1) ?? field;
  return labels[bare] ?? field;
}

// The labels are part of the page; what they mean the core has anyway, and is asked for it once.
const terms = signal<Record<string, Term>>({});
let asked = false;

async function ask(): Promise<void> {
  asked = true;
  terms.value = JSON.parse(await dispatch("glossary", "{}")).result.terms;
}

/** What a field means in a sentence; nothing until the core has said it. */
export function meaningOf(field: string): string {
  if (!asked) ask().catch(() => undefined); // coreTrouble says why, on every screen
  return terms.value[field]?.meaning ?? "";
}
