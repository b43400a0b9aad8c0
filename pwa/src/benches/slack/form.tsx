import { LengthField } from "../../controls/length-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import type { FormProps } from "../bench.ts";
import { InstrumentFold, OwnLimitFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { MethodPicker } from "../method-picker.tsx";
import { RunningFold } from "../running-fold.tsx";
import { ownQuantities } from "./ask.ts";
import { GROUPS, type Method, methods, text } from "./meta.ts";
import { MethodPicture } from "./pictures.tsx";

export function SlackForm(props: FormProps) {
  const { draft, change, problemAt } = props;
  const method = draft.method as Method;
  const { field, reading, instrument } = methods[method];
  const group = GROUPS.strand.includes(method) ? "strand" : "crank";
  return (
    <>
      <MethodPicker
        name="slack-method"
        legend={text.method}
        method={method}
        methods={methods}
        order={GROUPS[group]}
        picture={(id) => <MethodPicture method={id} />}
        draft={draft}
        change={change}
        above={
          <Segments
            label={text.group}
            ways={text.groups}
            chosen={group}
            onChoose={(id) => change({ method: GROUPS[id][0] ?? "total" })}
          />
        }
      />
      {method === "damper-arc" && (
        <LengthField
          field="damper_diameter_mm"
          label={text.damper}
          value={draft.fields.damper_diameter_mm ?? ""}
          onValue={(value) => change(withField("damper_diameter_mm", value))}
          hint={text.damperHint}
          problem={problemAt("damper_diameter_mm")?.text}
        />
      )}
      <ReadingsField
        field={field}
        label={reading}
        kind={field === "readings_mm" ? "length" : "angle"}
        {...readingsOf(draft, field)}
        onChange={(part) => change(withReadings(draft, field, part))}
        problem={problemAt(field)?.text}
      />
      <RunningFold {...props} />
      <InstrumentFold
        {...props}
        kind={instrument}
        suffix={field === "readings_mm" ? "mm" : "deg"}
      />
      <OwnLimitFold {...props} quantities={ownQuantities(method)} />
    </>
  );
}
