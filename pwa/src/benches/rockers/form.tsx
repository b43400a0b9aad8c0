import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { hintFor } from "../../core/as-read.ts";
import { parseNumber } from "../../units/parse.ts";
import type { Draft, FormProps } from "../bench.ts";
import { Reader, withField } from "../draft.ts";
import { TablesState } from "../lift/tables-state.tsx";
import { rockersOf, settingsOf } from "./ask.ts";
import { KEPT, type Part, text } from "./meta.ts";
import { RockerFields } from "./rocker-fields.tsx";

export function RockersForm({ tables, ...props }: FormProps & { tables: Draft | null }) {
  const { draft, change } = props;
  const part = draft.method as Part;
  return (
    <>
      <Segments
        label={text.part}
        ways={text.parts}
        chosen={part}
        onChoose={(method) => change({ method })}
      />
      {part === "rockers" && (
        <TablesState tables={tables} needed={text.needsTable} has={text.has} open={text.openLift} />
      )}
      <RockerFields {...props} />
      {part === "rockers" ? <CompareFields {...props} /> : <MatrixFields {...props} />}
    </>
  );
}

function CompareFields({ draft, change, problemAt }: FormProps) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <Select
        field="keep"
        label={text.keep}
        value={draft.fields.keep || "intake-closing"}
        options={Object.entries(KEPT).map(([id, label]) => ({ id, label }))}
        onValue={set("keep")}
      />
      <LengthField
        field="event_height_mm"
        label={text.height}
        value={draft.fields.event_height_mm ?? ""}
        onValue={set("event_height_mm")}
        hint={hintFor("event_height_mm", text.heightHint)}
        problem={problemAt("event_height_mm")?.text}
      />
      <Select
        field="cams"
        label={text.cams}
        value={draft.fields.cams || "one"}
        options={Object.entries(text.camChoices).map(([id, label]) => ({ id, label }))}
        onValue={set("cams")}
      />
    </>
  );
}

function MatrixFields({ draft, change, problemAt }: FormProps) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <PlainField
        field="settings"
        label={text.settings}
        value={draft.fields.settings ?? ""}
        onValue={set("settings")}
        unit="°"
        hint={text.settingsHint}
        problem={problemAt("settings_deg")?.text}
      />
      <LeaveOut draft={draft} onValue={set("left_out")} />
      {(["swap_min", "move_min"] as const).map((field) => (
        <PlainField
          key={field}
          field={field}
          label={field === "swap_min" ? text.swap : text.move}
          value={draft.fields[field] ?? ""}
          onValue={set(field)}
          parse={parseNumber}
          inputMode="decimal"
          unit={text.minutes}
          hint={field === "swap_min" ? text.swapHint : text.moveHint}
          problem={problemAt(field)?.text}
        />
      ))}
      <ul class="order">
        <li>
          <label>
            <input
              type="checkbox"
              checked={draft.fields.repeat !== "no"}
              onChange={(event) => set("repeat")(event.currentTarget.checked ? "yes" : "no")}
            />
            {text.repeat}
          </label>
        </li>
      </ul>
    </>
  );
}

/** Every test but the baseline, to be left out by a tap. */
function LeaveOut({ draft, onValue }: { draft: Draft; onValue(value: string): void }) {
  const rockers = rockersOf(new Reader(draft));
  const settings = settingsOf(draft.fields.settings ?? "") ?? [];
  const out = new Set((draft.fields.left_out ?? "").split("\n").filter(Boolean));
  const cells = rockers.flatMap(({ label }) => settings.map((deg) => [label, deg] as const));
  if (cells.length < 3) return null;
  const toggle = (key: string) => {
    const next = new Set(out);
    if (!next.delete(key)) next.add(key);
    onValue([...next].join("\n"));
  };
  return (
    <fieldset class="group">
      <legend>{text.leaveOut}</legend>
      <p class="note">{text.leaveOutHint}</p>
      <ul class="order">
        {cells.slice(1).map(([label, deg]) => (
          <li key={`${label}|${deg}`}>
            <label>
              <input
                type="checkbox"
                checked={out.has(`${label}|${deg}`)}
                onChange={() => toggle(`${label}|${deg}`)}
              />
              {label}, {deg}°
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
