import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { parseAngle, parseCount, parseNumber } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { InstrumentFold } from "../common-folds.tsx";
import { withField } from "../draft.ts";
import { chosen, tableOf } from "./lobe.ts";
import { CHOICES, type Choice, type Lobe, text } from "./meta.ts";
import { RowsEntry } from "./rows-entry.tsx";

export function LiftForm(props: FormProps) {
  const { draft, change, problemAt } = props;
  const lobe = draft.method as Lobe;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const of = (field: string) => draft.fields[field] ?? "";
  return (
    <>
      <Segments
        label={text.lobe}
        ways={text.lobes}
        chosen={lobe}
        onChoose={(method) => change({ method })}
      />
      <p class="caution-line">{text.direction}</p>
      <RowsEntry
        key={lobe}
        id={`${lobe}_text`}
        label={text.table}
        hint={text.tableHint}
        value={tableOf(draft, lobe)}
        pair={[of(`${lobe}_angle`), of(`${lobe}_lift`)]}
        onChange={({ text: table, pair }) => {
          const typed = {
            ...(table === undefined ? {} : { [`${lobe}_text`]: table }),
            ...(pair && { [`${lobe}_angle`]: pair[0], [`${lobe}_lift`]: pair[1] }),
            // Held with the table: another unit for lengths later must not change what was read.
            [`${lobe}_lift_unit`]: chosen(draft, lobe, "lift_unit"),
          };
          change({ fields: typed });
        }}
        labels={[text.angle, text.lift]}
        add={text.addRow}
        file={{ label: text.file, trouble: text.fileTrouble }}
        problem={problemAt("lobe")?.text}
      />
      <fieldset class="group">
        <legend class="visually-hidden">{text.how}</legend>
        {(Object.keys(CHOICES) as Choice[]).map((choice) => (
          <Select
            key={choice}
            field={`${lobe}_${choice}`}
            label={text.choice[choice]}
            value={chosen(draft, lobe, choice)}
            options={Object.entries(CHOICES[choice]).map(([id, label]) => ({ id, label }))}
            onValue={set(`${lobe}_${choice}`)}
          />
        ))}
      </fieldset>
      {chosen(draft, lobe, "lift_of") === "valve" && (
        <>
          <PlainField
            field={`${lobe}_table_ratio`}
            label={text.ratio}
            value={of(`${lobe}_table_ratio`)}
            onValue={set(`${lobe}_table_ratio`)}
            parse={parseNumber}
            inputMode="decimal"
          />
          <LengthField
            field={`${lobe}_table_lash_mm`}
            label={text.lash}
            value={of(`${lobe}_table_lash_mm`)}
            onValue={set(`${lobe}_table_lash_mm`)}
            hint={text.lashHint}
          />
        </>
      )}
      <PlainField
        field={`${lobe}_installed`}
        label={text.installed[lobe]}
        value={of(`${lobe}_installed`)}
        onValue={set(`${lobe}_installed`)}
        parse={parseAngle}
        inputMode="decimal"
        unit="°"
        hint={text.installedHint[lobe]}
      />
      <LengthField
        field="own_height_mm"
        label={text.height}
        value={of("own_height_mm")}
        onValue={set("own_height_mm")}
        hint={text.heightHint}
        problem={problemAt("heights_mm")?.text}
      />
      <Fold title={text.columns} open={of(`${lobe}_angle_column`) !== ""}>
        <PlainField
          field={`${lobe}_angle_column`}
          label={text.angleColumn}
          value={of(`${lobe}_angle_column`)}
          onValue={set(`${lobe}_angle_column`)}
          parse={parseCount}
          inputMode="numeric"
        />
        <PlainField
          field={`${lobe}_lift_column`}
          label={text.liftColumn}
          value={of(`${lobe}_lift_column`)}
          onValue={set(`${lobe}_lift_column`)}
          parse={parseCount}
          inputMode="numeric"
        />
      </Fold>
      <InstrumentFold {...props} kind="dial" suffix="mm" title={text.dial} />
      <InstrumentFold {...props} kind="wheel" suffix="deg" title={text.wheel} />
    </>
  );
}
