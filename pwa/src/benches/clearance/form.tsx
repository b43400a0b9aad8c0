import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { fixed } from "../../units/format.ts";
import { parseAngle, parseNumber } from "../../units/parse.ts";
import type { Draft, FormProps } from "../bench.ts";
import { InstrumentFold, OwnLimitFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { lastTdc } from "../last-tdc.ts";
import { RowsEntry } from "../lift/rows-entry.tsx";
import { TablesState } from "../lift/tables-state.tsx";
import { RockerFields } from "../rockers/rocker-fields.tsx";
import { dropsUnit, wayOf } from "./ask.ts";
import { type Part, text } from "./meta.ts";

export function ClearanceForm({ tables, ...props }: FormProps & { tables: Draft | null }) {
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
      {part === "compression" ? (
        <>
          <Crank {...props} />
          <CompressionFields {...props} />
        </>
      ) : (
        <>
          <TablesState
            tables={tables}
            needed={text.needsTable[part]}
            has={text.has}
            open={text.openLift}
          />
          <Measured {...props} part={part} />
          <Crank {...props} />
          <RockerFields {...props} />
          <LimitFields {...props} />
          <InstrumentFold {...props} kind="dial" suffix="mm" title={text.dial} />
          <OwnLimitFold
            {...props}
            quantities={["valve_clearance_mm"]}
            leastOnly
            against={text.ownAgainst}
          />
        </>
      )}
    </>
  );
}

function Measured(props: FormProps & { part: "intake" | "exhaust" }) {
  const { draft, change, problemAt, part } = props;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const of = (field: string) => draft.fields[field] ?? "";
  return (
    <>
      <Select
        field="clearance_by"
        label={text.by}
        value={wayOf(draft)}
        options={Object.entries(text.ways).map(([id, label]) => ({ id, label }))}
        onValue={set("clearance_by")}
      />
      {wayOf(draft) === "drop" ? (
        <>
          <p class="caution-line">{text.springs}</p>
          <RowsEntry
            key={part}
            id={`${part}_drops`}
            label={text.drops}
            hint={text.dropsHint}
            value={of(`${part}_drops`)}
            pair={[of(`${part}_drop_angle`), of(`${part}_drop_travel`)]}
            onChange={({ text: rows, pair }) => {
              const typed = {
                ...(rows === undefined ? {} : { [`${part}_drops`]: rows }),
                ...(pair && { [`${part}_drop_angle`]: pair[0], [`${part}_drop_travel`]: pair[1] }),
                // Held with the rows: another unit for lengths later must not change them.
                drops_unit: dropsUnit(draft),
              };
              change({ fields: typed });
            }}
            labels={[text.angle, text.travel]}
            add={text.add}
            problem={problemAt("drops")?.text}
          />
          <Select
            field="drops_unit"
            label={text.dropsUnit}
            value={dropsUnit(draft)}
            options={Object.entries(text.dropUnits).map(([id, label]) => ({ id, label }))}
            onValue={set("drops_unit")}
          />
        </>
      ) : (
        <ReadingsField
          field="readings_mm"
          label={text.clay}
          kind="length"
          {...readingsOf(draft, "readings_mm")}
          onChange={(one) => change(withReadings(draft, "readings_mm", one))}
          problem={problemAt("readings_mm")?.text}
        />
      )}
    </>
  );
}

function Crank({ draft, change, problemAt }: FormProps) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  const of = (field: string) => draft.fields[field] ?? "";
  const found = lastTdc()?.result.measured.expanded_uncertainty;
  return (
    <>
      {(["stroke_mm", "rod_length_mm"] as const).map((field) => (
        <LengthField
          key={field}
          field={field}
          label={field === "stroke_mm" ? text.stroke : text.rod}
          value={of(field)}
          onValue={set(field)}
          problem={problemAt(field)?.text}
        />
      ))}
      <Fold title={text.more} open={of("pin_offset_mm") !== "" || of("valve_axis_deg") !== ""}>
        <LengthField
          field="pin_offset_mm"
          label={text.offset}
          value={of("pin_offset_mm")}
          onValue={set("pin_offset_mm")}
          hint={text.offsetHint}
          problem={problemAt("pin_offset_mm")?.text}
        />
        {draft.method !== "compression" && (
          <>
            <AngleField
              {...{ draft, change, problemAt }}
              field="valve_axis_deg"
              label={text.axis}
            />
            <AngleField
              {...{ draft, change, problemAt }}
              field="tdc_plus_minus_deg"
              label={text.tdc}
              hint={found === undefined ? text.tdcHint : text.tdcFound(fixed(found, 2))}
            />
          </>
        )}
      </Fold>
    </>
  );
}

type AngleProps = Pick<FormProps, "draft" | "change" | "problemAt"> & {
  field: string;
  label: string;
  hint?: string;
};

function AngleField({ draft, change, problemAt, field, label, hint }: AngleProps) {
  return (
    <PlainField
      field={field}
      label={label}
      value={draft.fields[field] ?? ""}
      onValue={(value) => change(withField(field, value))}
      parse={parseAngle}
      inputMode="decimal"
      unit="°"
      hint={hint}
      problem={problemAt(field)?.text}
    />
  );
}

function LimitFields({ draft, change, problemAt }: FormProps) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <Fold title={text.limits} open={Boolean(draft.fields.deck_clearance_mm)}>
      <LengthField
        field="deck_clearance_mm"
        label={text.deck}
        value={draft.fields.deck_clearance_mm ?? ""}
        onValue={set("deck_clearance_mm")}
        hint={text.deckHint}
        problem={problemAt("deck_clearance_mm")?.text}
      />
      <LengthField
        field="radial_clearance_mm"
        label={text.radial}
        value={draft.fields.radial_clearance_mm ?? ""}
        onValue={set("radial_clearance_mm")}
        problem={problemAt("radial_clearance_mm")?.text}
      />
      <ul class="order">
        <li>
          <label>
            <input
              type="checkbox"
              checked={draft.fields.aluminium === "yes"}
              onChange={(event) => set("aluminium")(event.currentTarget.checked ? "yes" : "no")}
            />
            {text.aluminium}
          </label>
        </li>
      </ul>
    </Fold>
  );
}

function CompressionFields(props: FormProps) {
  const { draft, change, problemAt } = props;
  const numbers = [
    ["static_ratio", text.ratio, "", undefined],
    ["exponent", text.exponent, "", text.exponentHint],
    ["inlet_pressure_kpa", text.pressure, "kPa", text.pressureHint],
  ] as const;
  const field = ([name, label, unit, hint]: (typeof numbers)[number]) => (
    <PlainField
      key={name}
      field={name}
      label={label}
      value={draft.fields[name] ?? ""}
      onValue={(value) => change(withField(name, value))}
      parse={parseNumber}
      inputMode="decimal"
      {...(unit ? { unit } : {})}
      hint={hint}
      problem={problemAt(name)?.text}
    />
  );
  return (
    <>
      {field(numbers[0])}
      <AngleField
        {...props}
        field="intake_closing_abdc_deg"
        label={text.closing}
        hint={text.closingHint}
      />
      <AngleField
        {...props}
        field="closing_plus_minus_deg"
        label={text.closingError}
        hint={text.closingErrorHint}
      />
      {field(numbers[1])}
      {field(numbers[2])}
    </>
  );
}
