import { useMemo } from "preact/hooks";
import { Choice } from "../../controls/choice.tsx";
import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { PowerField } from "../../controls/power-field.tsx";
import { hintFor } from "../../core/as-read.ts";
import { isLength, parseNumber } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { Temperatures } from "../heat/heat-fields.tsx";
import { text as heatText, USUAL_BLOCKS } from "../heat/meta.ts";
import { BenchLayout } from "../layout.tsx";
import { MovementField } from "../movement-field.tsx";
import { useBench } from "../use-bench.ts";
import { WindowFold } from "../window-fold.tsx";
import { toAsk } from "./ask.ts";
import { EvidenceFields } from "./evidence-fields.tsx";
import { fromSessions, useFromSessions } from "./from-sessions.ts";
import { empty, FRICTION, text } from "./meta.ts";

export function GainView() {
  useFromSessions();
  const on = useBench("gain", empty, toAsk);
  // The answer changes with every key, the form only when it speaks against a field or fills one.
  const warm = Boolean(on?.draft.fields.block_material);
  const spoken = on?.answer && (warm || !on.answer.ok) ? on.answer : null;
  const form = useMemo(
    () => on && <GainForm {...on} />,
    [on?.draft, on?.stand.drive, on?.stand.chain, on?.stand.gears, spoken, fromSessions.value],
  );
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="movement_mm"
      quantity="gain_kw"
      saveLabel={text.save}
    >
      {form}
    </BenchLayout>
  );
}

function GainForm(props: FormProps) {
  const { draft, change, problemAt } = props;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const value = (field: string) => draft.fields[field] ?? "";
  const problem = (field: string) => problemAt(field)?.text;
  return (
    <>
      <p class="how">{text.how}</p>
      <MovementField {...props} label={text.movement} hint={text.movementHint} />
      <PowerField
        field="peak_power_kw"
        label={text.power}
        value={value("peak_power_kw")}
        onValue={set("peak_power_kw")}
        hint={text.powerHint}
        problem={problem("peak_power_kw")}
      />
      <PlainField
        field="peak_speed_rpm"
        label={text.speed}
        value={value("peak_speed_rpm")}
        onValue={set("peak_speed_rpm")}
        parse={parseNumber}
        inputMode="decimal"
        unit="rpm"
        problem={problem("peak_speed_rpm")}
      />
      <EvidenceFields {...props} />
      <WindowFold {...props} />
      <Fold title={text.sure} open={Boolean(value("standard_uncertainty_mm"))}>
        <LengthField
          field="standard_uncertainty_mm"
          label={text.sure}
          value={value("standard_uncertainty_mm")}
          onValue={set("standard_uncertainty_mm")}
          hint={hintFor("standard_uncertainty_mm", text.sureHint)}
          problem={problem("standard_uncertainty_mm")}
        />
      </Fold>
      <Fold title={text.heatFold} open={Boolean(value("block_material"))}>
        <Choice
          name="gain-block"
          legend={text.block}
          value={value("block_material")}
          onValue={set("block_material")}
          options={[
            { id: "", label: text.blockNone },
            ...USUAL_BLOCKS.map((id) => ({ id, label: heatText.blockUsual[id] ?? id })),
          ]}
        />
        {value("block_material") !== "" && <Temperatures {...props} />}
      </Fold>
      <Fold title={text.frictionFold} open={FRICTION.some((field) => value(field) !== "")}>
        {FRICTION.map((field) =>
          isLength(field) ? (
            <LengthField
              key={field}
              field={field}
              label={text.friction[field]}
              value={value(field)}
              onValue={set(field)}
              hint={hintFor(field, text.frictionHint[field])}
              problem={problem(field)}
            />
          ) : (
            <PlainField
              key={field}
              field={field}
              label={text.friction[field]}
              value={value(field)}
              onValue={set(field)}
              parse={parseNumber}
              inputMode="decimal"
              unit={field === "stiffness_n_per_mm" ? "N/mm" : ""}
              hint={text.frictionHint[field]}
              problem={problem(field)}
            />
          ),
        )}
        <PlainField
          field="friction_source"
          label={text.frictionSource}
          value={value("friction_source")}
          onValue={set("friction_source")}
          problem={problem("friction_source")}
        />
      </Fold>
    </>
  );
}
