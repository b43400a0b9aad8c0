import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { asRead } from "../../core/as-read.ts";
import { unitOf } from "../../store/settings.ts";
import { fixed, lengthText } from "../../units/format.ts";
import { parseNumber } from "../../units/parse.ts";
import { parseSigned } from "../../units/signed.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { rowsOf } from "./ask.ts";
import { fromSessions, takesSessions } from "./from-sessions.ts";
import { MOST_ROWS, text } from "./meta.ts";

const OF_ROW = [
  "engine",
  "from_movement_mm",
  "to_movement_mm",
  "gain_percent",
  "standard_uncertainty_percent",
] as const;

/** The comparisons that the range is to rest on, typed in one after another. */
export function EvidenceFields({ draft, change }: FormProps) {
  const count = rowsOf(draft);
  const found = asRead(fromSessions.value);
  const taken = found && takesSessions(draft) ? found.rows.length : 0;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const remove = (index: number) => {
    const fields: Record<string, string> = { rows: String(count - 1) };
    for (const name of OF_ROW) {
      for (let i = index; i < count; i += 1) {
        fields[`${name}_${i}`] = draft.fields[`${name}_${i + 1}`] ?? "";
      }
    }
    change({ fields });
  };
  return (
    <Fold title={text.evidence(count + taken)} open={count + taken > 0}>
      {found && found.rows.length > 0 && (
        <>
          <label class="check">
            <input
              type="checkbox"
              checked={takesSessions(draft)}
              onChange={(event) =>
                change(withField("without_sessions", event.currentTarget.checked ? "" : "yes"))
              }
            />
            {text.takeSessions(found.rows.length)}
          </label>
          <ul class="plain-list">
            {found.rows.map((row) => (
              <li key={`${row.session} ${row.from_movement_mm} ${row.to_movement_mm}`}>
                {text.fromSession(
                  row.session,
                  lengthText(row.from_movement_mm, unitOf("movement_mm")),
                  lengthText(row.to_movement_mm, unitOf("movement_mm")),
                  unitOf("movement_mm"),
                  fixed(row.gain_percent, 2),
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {found?.passed.map((one) => (
        <p class="note" key={`${one.session} ${one.why}`}>
          {text.passed(one.session, text.why[one.why] ?? one.why)}
        </p>
      ))}
      <p class="note">{text.evidenceHow}</p>
      {Array.from({ length: count }, (_, i) => (
        <fieldset class="group" key={i}>
          <legend class="visually-hidden">{text.row(i + 1)}</legend>
          <div class="group-head">
            <span aria-hidden="true">{text.row(i + 1)}</span>
            <button
              type="button"
              class="button"
              onClick={() => remove(i)}
              aria-label={text.remove(i + 1)}
            >
              ×
            </button>
          </div>
          <PlainField
            field={`engine_${i}`}
            label={text.engine}
            value={draft.fields[`engine_${i}`] ?? ""}
            onValue={set(`engine_${i}`)}
            hint={text.engineHint}
            maxLength={100}
          />
          {(["from", "to"] as const).map((end) => (
            <LengthField
              key={end}
              field={`${end}_movement_mm_${i}`}
              label={text[end]}
              value={draft.fields[`${end}_movement_mm_${i}`] ?? ""}
              onValue={set(`${end}_movement_mm_${i}`)}
            />
          ))}
          <PlainField
            field={`gain_percent_${i}`}
            label={text.gainOf}
            value={draft.fields[`gain_percent_${i}`] ?? ""}
            onValue={set(`gain_percent_${i}`)}
            parse={parseSigned}
            inputMode="text"
            unit="%"
            hint={text.gainHint}
          />
          <PlainField
            field={`standard_uncertainty_percent_${i}`}
            label={text.u}
            value={draft.fields[`standard_uncertainty_percent_${i}`] ?? ""}
            onValue={set(`standard_uncertainty_percent_${i}`)}
            parse={parseNumber}
            inputMode="decimal"
            unit="%"
            hint={text.uHint}
          />
        </fieldset>
      ))}
      {count > 0 && (
        <PlainField
          field="engine"
          label={text.asked}
          value={draft.fields.engine ?? ""}
          onValue={set("engine")}
          maxLength={100}
        />
      )}
      {count < MOST_ROWS && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => change(withField("rows", String(count + 1)))}
        >
          {text.add}
        </button>
      )}
    </Fold>
  );
}
