import { setUnit, unitOf } from "../store/settings.ts";
import type { LengthUnit } from "../units/parse.ts";
import { text } from "./strings.ts";

const UNITS: LengthUnit[] = ["in", "mm"];

/** Inches or millimetres for one field; remembered. */
export function UnitSwitch({ field, label }: { field: string; label: string }) {
  const now = unitOf(field);
  return (
    <fieldset class="unit-switch" aria-label={text.unitOf(label)}>
      {UNITS.map((unit) => (
        <button
          key={unit}
          type="button"
          aria-pressed={unit === now}
          onClick={() => setUnit(field, unit)}
        >
          {unit}
        </button>
      ))}
    </fieldset>
  );
}
