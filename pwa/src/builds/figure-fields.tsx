import { useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import type { useDraft } from "../shelf/use-draft.ts";
import { parseSigned } from "../units/signed.ts";
import { MOST_ROWS, rowsOf } from "./entry-draft.ts";
import { PEAKS } from "./session.ts";
import { labelText, unitText } from "./stored.ts";
import { text } from "./strings.ts";

type Form = ReturnType<typeof useDraft>;

/** Figures of any kind: what, how much, in which unit. */
export function FigureRows({ form: { draft, set } }: { form: Form }) {
  const [asked, setAsked] = useState(1);
  const count = Math.min(MOST_ROWS, Math.max(asked, rowsOf(draft)));
  return (
    <>
      {Array.from({ length: count }, (_, i) => `figure${i}`).map((name, i) => (
        <fieldset key={name} class="figure-row">
          <legend>{text.figure(i + 1)}</legend>
          <PlainField
            field={`${name}_label`}
            label={text.figureName}
            value={draft[`${name}_label`] ?? ""}
            onValue={set(`${name}_label`)}
            maxLength={60}
          />
          <PlainField
            field={`${name}_value`}
            label={text.figureValue}
            value={draft[`${name}_value`] ?? ""}
            onValue={set(`${name}_value`)}
            parse={parseSigned}
            inputMode="decimal"
            maxLength={20}
          />
          <PlainField
            field={`${name}_unit`}
            label={text.figureUnit}
            value={draft[`${name}_unit`] ?? ""}
            onValue={set(`${name}_unit`)}
            maxLength={20}
          />
        </fieldset>
      ))}
      {count < MOST_ROWS && (
        <button type="button" class="button button-wide" onClick={() => setAsked(count + 1)}>
          {text.addFigure}
        </button>
      )}
    </>
  );
}

/** The peaks of a dyno session and its air, each in the unit of the dyno's own sheet. */
export function PeakFields({ form: { draft, set } }: { form: Form }) {
  return (
    <div class="pair">
      {PEAKS.map(({ field, label, units }) => (
        <PlainField
          key={field}
          field={field}
          label={labelText(label)}
          value={draft[field] ?? ""}
          onValue={set(field)}
          parse={parseSigned}
          inputMode="decimal"
          maxLength={20}
          {...(units.length === 1 ? { unit: unitText(units[0] as string) } : {})}
        >
          {units.length > 1 && (
            <fieldset class="unit-switch" aria-label={`${text.figureUnit}: ${labelText(label)}`}>
              {units.map((unit) => (
                <button
                  key={unit}
                  type="button"
                  aria-pressed={unit === (draft[`${field}_unit`] || units[0])}
                  onClick={() => set(`${field}_unit`)(unit)}
                >
                  {unit}
                </button>
              ))}
            </fieldset>
          )}
        </PlainField>
      ))}
    </div>
  );
}
