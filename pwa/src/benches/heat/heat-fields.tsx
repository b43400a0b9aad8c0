import { Choice } from "../../controls/choice.tsx";
import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { TemperatureField } from "../../controls/temperature-field.tsx";
import { TemperatureSwitch } from "../../controls/unit-switch.tsx";
import { hintFor } from "../../core/as-read.ts";
import { originText } from "../../result/origin.tsx";
import { settings } from "../../store/settings.ts";
import { parseNumber } from "../../units/parse.ts";
import { DIFFERENCE_SIGNS, parseDifference, temperatureText } from "../../units/temperature.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { text as shared } from "../strings.ts";
import { MaterialField, OwnSource } from "./material-field.tsx";
import { BLOCK_PARTS, DOUBTS, OTHER, OWN, text, USUAL_BLOCKS } from "./meta.ts";

/** What decides how hot slack differs from cold: materials and temperatures. */
export function HeatFields(props: FormProps) {
  const { draft, change, problemAt } = props;
  const chosen = draft.fields.block_material ?? "";
  const usual = USUAL_BLOCKS.includes(chosen);
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <Choice
        name="block"
        legend={text.block}
        value={chosen === "" || usual ? chosen : "other"}
        onValue={(id) => change(withField("block_material", id === "other" ? OTHER : id))}
        options={[
          ...USUAL_BLOCKS.map((id) => ({ id, label: text.blockUsual[id] ?? id })),
          { id: "other", label: text.blockOther },
        ]}
      />
      <Heating {...props} />
      <Doubts {...props} />
      <Fold title={text.stiffnessFold} open={Boolean(draft.fields.stiffness_n_per_mm)}>
        <PlainField
          field="stiffness_n_per_mm"
          label={text.stiffness}
          value={draft.fields.stiffness_n_per_mm ?? ""}
          onValue={set("stiffness_n_per_mm")}
          parse={parseNumber}
          inputMode="decimal"
          unit="N/mm"
          hint={text.stiffnessHint}
          problem={problemAt("stiffness_n_per_mm")?.text}
        />
        <PlainField
          field="compliance_um_per_kn"
          label={text.give}
          value={draft.fields.compliance_um_per_kn ?? ""}
          onValue={set("compliance_um_per_kn")}
          parse={parseNumber}
          inputMode="decimal"
          unit="µm/kN"
          hint={text.giveHint}
          problem={problemAt("compliance_um_per_kn")?.text}
        />
        <PlainField
          field="stiffness_source"
          label={text.stiffnessSource}
          value={draft.fields.stiffness_source ?? ""}
          onValue={set("stiffness_source")}
          problem={problemAt("stiffness_source")?.text}
        />
      </Fold>
    </>
  );
}

/** How far off reading, materials and temperatures may be. */
function Doubts({ draft, change, problemAt }: FormProps) {
  const names = ["standard_uncertainty_mm", ...DOUBTS] as const;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const { temperature } = settings.value;
  return (
    <Fold title={text.sureFold} open={names.some((field) => Boolean(draft.fields[field]))}>
      <LengthField
        field="standard_uncertainty_mm"
        label={text.sure.standard_uncertainty_mm}
        value={draft.fields.standard_uncertainty_mm ?? ""}
        onValue={set("standard_uncertainty_mm")}
        hint={hintFor("standard_uncertainty_mm", text.sureHint.standard_uncertainty_mm)}
        problem={problemAt("standard_uncertainty_mm")?.text}
      />
      {DOUBTS.map((field) => (
        <PlainField
          key={field}
          field={field}
          label={text.sure[field]}
          value={draft.fields[field] ?? ""}
          onValue={set(field)}
          parse={(typed) =>
            field.endsWith("_k") ? parseDifference(typed, temperature) : parseNumber(typed)
          }
          inputMode="decimal"
          unit={field.endsWith("_k") ? DIFFERENCE_SIGNS[temperature] : text.perKelvin}
          hint={hintFor(field, text.sureHint[field])}
          problem={problemAt(field)?.text}
        />
      ))}
    </Fold>
  );
}

/** What the parts are made of, and how warm they are. */
export function Heating(props: FormProps) {
  const { block_material: block = "", gear_material, chain_material } = props.draft.fields;
  const own = BLOCK_PARTS.some((part) => props.draft.fields[`${part}_material`] === OWN);
  return (
    <>
      {block !== "" && (
        <MaterialField {...props} part="block" bare={USUAL_BLOCKS.includes(block)} />
      )}
      <Fold title={text.materialsFold} open={Boolean(gear_material || chain_material)}>
        <MaterialField {...props} part="gear" />
        <MaterialField {...props} part="chain" />
      </Fold>
      {own && <OwnSource {...props} />}
      <Temperatures {...props} />
    </>
  );
}

const PLACES = ["cold", ...BLOCK_PARTS] as const;

export function Temperatures({ draft, change, problemAt, assumed }: FormProps) {
  return (
    <fieldset class="group">
      <legend class="visually-hidden">{text.temperatures}</legend>
      <div class="group-head">
        <span aria-hidden="true">{text.temperatures}</span>
        <TemperatureSwitch label={text.temperatures} />
      </div>
      <div class="pair">
        {PLACES.map((place) => {
          const field = `${place}_temperature_c`;
          const usual = assumed(field);
          return (
            <TemperatureField
              key={field}
              field={field}
              label={text.temperature[place]}
              value={draft.fields[field] ?? ""}
              onValue={(value) => change(withField(field, value))}
              hint={
                usual &&
                shared.leftEmptyOf(
                  temperatureText(Number(usual.value), settings.value.temperature),
                  originText(usual.origin),
                )
              }
              problem={problemAt(field)?.text}
            />
          );
        })}
      </div>
    </fieldset>
  );
}
