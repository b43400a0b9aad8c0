/** Names and units of the core's quantities, from its own glossary. */
import { terms } from "virtual:glossary";

export { defaults, limits, materials, version as coreVersion } from "virtual:glossary";

/** The screen's name of a field of the core. */
export function labelOf(field: string): string {
  const bare =
    field
      .replace(/\[\d+\]$/, "")
      .split(".")
      .at(-1) ?? field;
  return terms[bare]?.label ?? field;
}

export function meaningOf(field: string): string {
  return terms[field]?.meaning ?? "";
}
