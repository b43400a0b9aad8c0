/** Names and meanings of the core's quantities, from its own glossary. */

import { labels, limits as limitsOnFile, materials as materialsOnFile } from "virtual:glossary";
import { signal } from "@preact/signals";
import { said, told } from "../words/told.ts";
import { dispatch } from "./client.ts";
import type { Term } from "./results.ts";

export {
  defaults,
  limits as limitsOnFile,
  opened,
  version as coreVersion,
} from "virtual:glossary";
export const limits = told(limitsOnFile);
export const materials = told(materialsOnFile);

/** The screen's name of a field of the core. */
export function labelOf(field: string): string {
  const bare =
    field
      .replace(/\[\d+\]$/, "")
      .split(".")
      .at(-1) ?? field;
  return said(labels[bare] ?? field);
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
  return said(terms.value[field]?.meaning ?? "");
}
