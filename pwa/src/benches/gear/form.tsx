import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { unitOf } from "../../store/settings.ts";
import { lengthText } from "../../units/format.ts";
import { parseCount } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { InstrumentFold, OwnLimitFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { MethodPicker } from "../method-picker.tsx";
import { UseDrive } from "../use-drive.tsx";
import { knownRoller, usesDrive } from "./ask.ts";
import { type Method, methods, order, text, type Which } from "./meta.ts";
import { MethodPicture } from "./pictures.tsx";

export function GearForm(props: FormProps) {
  const { draft, stand, change, problemAt } = props;
  const method = draft.method as Method;
  const { reading, field: between } = methods[method];
  const withDrive = usesDrive(draft, stand);
  const roller = knownRoller(draft, stand);
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <MethodPicker
        name="gear-method"
        legend={text.method}
        method={method}
        methods={methods}
        order={order}
        picture={(id) => <MethodPicture method={id} />}
        draft={draft}
        change={change}
      />
      {withDrive && (
        <Segments
          label={text.gear}
          ways={{
            crank: `${text.gears.crank}, ${stand.drive?.crank_teeth}`,
            cam: `${text.gears.cam}, ${stand.drive?.cam_teeth}`,
          }}
          chosen={draft.fields.gear as Which}
          onChoose={set("gear")}
        />
      )}
      <ReadingsField
        field="readings_mm"
        label={reading}
        kind="length"
        {...readingsOf(draft, "readings_mm")}
        onChange={(part) => change(withReadings(draft, "readings_mm", part))}
        problem={problemAt("readings_mm")?.text}
      />
      <LengthField
        field={between}
        label={text.between[between]}
        value={draft.fields[between] ?? ""}
        onValue={set(between)}
        hint={
          roller === undefined ? undefined : text.rollerTaken(lengthText(roller, unitOf(between)))
        }
        problem={problemAt(between)?.text}
      />
      <UseDrive {...props} withDrive={withDrive} label={text.useDrive} />
      {!withDrive && (
        <>
          <PlainField
            field="teeth"
            label={text.teeth}
            value={draft.fields.teeth ?? ""}
            onValue={set("teeth")}
            parse={parseCount}
            inputMode="numeric"
            problem={problemAt("teeth")?.text}
          />
          <LengthField
            field="pitch_mm"
            label={text.pitch}
            value={draft.fields.pitch_mm ?? ""}
            onValue={set("pitch_mm")}
            problem={problemAt("pitch_mm")?.text}
          />
        </>
      )}
      <InstrumentFold {...props} kind="caliper" suffix="mm" />
      <OwnLimitFold {...props} quantities={["reading_mm"]} />
    </>
  );
}
