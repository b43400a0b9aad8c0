import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Select } from "../../controls/select.tsx";
import { unitOf } from "../../store/settings.ts";
import { exactLength, lengthText } from "../../units/format.ts";
import { parseCount, parseLength, parseNumber } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { chainSizes, sizesIn } from "../chain-sizes.ts";
import { InstrumentFold, OwnLimitFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { MethodPicker } from "../method-picker.tsx";
import { RunningFold } from "../running-fold.tsx";
import { UseDrive } from "../use-drive.tsx";
import { ownQuantities, usesDrive } from "./ask.ts";
import { type Method, methods, order, text } from "./meta.ts";
import { MethodPicture } from "./pictures.tsx";

export function WearForm(props: FormProps) {
  const { draft, stand, change, problemAt } = props;
  const method = draft.method as Method;
  const { readings, needsRoller } = methods[method];
  const withDrive = usesDrive(draft, stand);
  const set = (field: string) => (value: string) => change(withField(field, value));
  const rollerKnown =
    stand.chain?.roller_diameter_mm ?? (withDrive && stand.drive?.roller_diameter_mm);
  return (
    <>
      <MethodPicker
        name="wear-method"
        legend={text.method}
        method={method}
        methods={methods}
        order={order}
        picture={(id) => <MethodPicture method={id} />}
        draft={draft}
        change={change}
      />
      {readings.map(({ field, label }) => (
        <ReadingsField
          key={`${method} ${field}`}
          field={field}
          label={label}
          kind="length"
          {...readingsOf(draft, field)}
          onChange={(part) => change(withReadings(draft, field, part))}
          problem={problemAt(field)?.text}
        />
      ))}
      <PlainField
        field="pitches"
        label={text.pitches}
        value={draft.fields.pitches ?? ""}
        onValue={set("pitches")}
        parse={parseCount}
        inputMode="numeric"
        hint={`${text.pitchesHint} ${nominal(props)}`}
        problem={problemAt("pitches")?.text}
      />
      {stand.chain && (
        <PlainField
          field="load_n"
          label={text.load}
          value={draft.fields.load_n ?? ""}
          onValue={set("load_n")}
          parse={parseNumber}
          inputMode="decimal"
          unit="N"
          hint={text.loadHint}
        />
      )}
      <UseDrive {...props} withDrive={withDrive} label={text.useDrive} />
      {!withDrive && !stand.chain && <PitchFields {...props} />}
      {needsRoller && !rollerKnown && (
        <LengthField
          field="roller_diameter_mm"
          label={text.roller}
          value={draft.fields.roller_diameter_mm ?? ""}
          onValue={set("roller_diameter_mm")}
          hint={text.rollerHint}
          problem={problemAt("roller_diameter_mm")?.text}
        />
      )}
      <RunningFold {...props} />
      <InstrumentFold {...props} kind="caliper" suffix="mm" />
      <OwnLimitFold {...props} quantities={ownQuantities(method, withDrive)} />
    </>
  );
}

function PitchFields({ draft, change, problemAt }: FormProps) {
  const typed = draft.fields.pitch_mm ?? "";
  return (
    <>
      <Select
        field="chain_size"
        label={text.pitchPick}
        value={draft.fields.chain_size ?? ""}
        options={[{ id: "", label: text.pitchOther }, ...sizesIn("pitch_mm")]}
        onValue={(id) => {
          const size = chainSizes.find((one) => one.id === id);
          const found = size && {
            pitch_mm: exactLength(size.pitch, unitOf("pitch_mm")),
            roller_diameter_mm: exactLength(size.roller, unitOf("roller_diameter_mm")),
          };
          change({ fields: { ...found, chain_size: id } });
        }}
      />
      <LengthField
        field="pitch_mm"
        label={text.pitch}
        value={typed}
        onValue={(value) => change({ fields: { pitch_mm: value, chain_size: "" } })}
        hint={text.pitchHint}
        problem={problemAt("pitch_mm")?.text}
      />
    </>
  );
}

/** The length of the stretch on a new chain, for a first look at the jaws. */
function nominal({ draft, stand }: FormProps): string {
  const count = parseCount(draft.fields.pitches ?? "");
  const typed = parseLength(draft.fields.pitch_mm ?? "", unitOf("pitch_mm"));
  const own = usesDrive(draft, stand) ? stand.drive : stand.chain;
  const pitch = own?.pitch_mm ?? (typed.ok ? typed.mm : undefined);
  const length = unitOf("readings_mm");
  return count.ok && pitch ? text.nominal(lengthText(count.value * pitch, length)) : "";
}
