import { Choice } from "../../controls/choice.tsx";
import { Fold } from "../../controls/fold.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { RunningSwitch } from "../../controls/unit-switch.tsx";
import { show, withUnit } from "../../result/quantity.ts";
import { currentBuild, settings, unitOf } from "../../store/settings.ts";
import { parseNumber } from "../../units/parse.ts";
import { distanceOf, parseRunning, ranText, speedText, USUAL_SPEED } from "../../units/running.ts";
import { whenText } from "../../units/when.ts";
import type { FormProps } from "../bench.ts";
import { text as together } from "../combined/meta.ts";
import { OwnLimitFold } from "../common-folds.tsx";
import { withField } from "../draft.ts";
import { WindowFold } from "../window-fold.tsx";
import { inMiles, LIMITED, listedHere, oilHere, planHere } from "./ask.ts";
import { text } from "./meta.ts";
import { type Listed, outField, ranField } from "./pick.ts";
import { OILS, oilOf, useOf } from "./plan.ts";
import { useText } from "./words.ts";

export function ForecastForm(props: FormProps) {
  const { draft, stand, change } = props;
  const all = listedHere(draft, stand);
  const build = currentBuild.value;
  return (
    <>
      <fieldset class="picks">
        <legend>{text.readings}</legend>
        {build && <p class="note">{text.ofBuild(build.label)}</p>}
        {all.length === 0 && <p class="note">{text.none}</p>}
        {all.map((one) => (
          <Row key={one.id} {...props} one={one} />
        ))}
      </fieldset>
      <Oil {...props} />
      <Use draft={draft} change={change} />
      <WindowFold {...props} />
      <OwnLimitFold {...props} quantities={LIMITED} against={text.limitUsed} upperOnly />
    </>
  );
}

/** One saved reading: what it says, how far it had run, and whether it counts. */
function Row({ draft, change, one }: FormProps & { one: Listed }) {
  const at = show(one.quantity, one.value, one.expanded, unitOf("readings_mm"));
  const { running } = settings.value;
  const field = ranField(one.id);
  return (
    <div>
      <label class="pick">
        <input
          type="checkbox"
          checked={!one.out && one.ran !== null}
          disabled={one.ran === null}
          onChange={() => change(withField(outField(one.id), one.out ? "" : "yes"))}
        />
        <span>
          <strong class="num">{withUnit(at.value, at.unit)}</strong>{" "}
          <span class="num">± {at.plusMinus}</span>
          <span class="pick-what">
            {together.names[one.quantity]}, {one.ran ? ranText(one.ran, running) : text.notPlaced},{" "}
            {whenText(one.taken_at)}
          </span>
        </span>
      </label>
      {!one.noted && (
        <PlainField
          field={field}
          label={text.ran(whenText(one.taken_at))}
          value={draft.fields[field] ?? ""}
          onValue={(value) => change(withField(field, value))}
          parse={(words) => parseRunning(words, running)}
          inputMode="decimal"
          hint={text.ranWhy}
          maxLength={30}
        >
          <RunningSwitch label={text.ran(whenText(one.taken_at))} />
        </PlainField>
      )}
    </div>
  );
}

function Oil({ draft, change }: FormProps) {
  const planned = oilOf(planHere());
  return (
    <>
      <Choice
        name="forecast-oil"
        legend={text.oil}
        options={[
          ...OILS.map((id) => ({ id, label: text.oils[id] })),
          { id: "", label: text.oilUnknown },
        ]}
        value={oilHere(draft)}
        onValue={(id) => change(withField("oil_kind", id))}
      />
      <p class="how">
        {planned && text.oilFromPlan(text.oils[planned.kind])} {planned?.changed && text.oilChanged}{" "}
        {text.oilWhy}
      </p>
    </>
  );
}

/** What turns running into days, and hours into distance. */
function Use({ draft, change }: Pick<FormProps, "draft" | "change">) {
  const planned = useOf(planHere());
  const hours = draft.fields.use_by === "hours";
  const set = (field: string) => (value: string) => change(withField(field, value));
  const typed = Boolean(draft.fields.use || draft.fields.speed);
  return (
    <Fold title={text.use} open={typed || planned === null}>
      <Segments
        label={text.useBy}
        ways={text.useWays}
        chosen={hours ? "hours" : "distance"}
        onChoose={set("use_by")}
      />
      <PlainField
        field="use"
        label={text.use}
        value={draft.fields.use ?? ""}
        onValue={set("use")}
        parse={parseNumber}
        inputMode="decimal"
        unit={hours ? "h" : inMiles() ? "mi" : "km"}
        hint={planned ? text.useFromPlan(useText(planned)) : text.useHint}
      />
      <PlainField
        field="speed"
        label={text.speed}
        value={draft.fields.speed ?? ""}
        onValue={set("speed")}
        parse={parseNumber}
        inputMode="decimal"
        unit={inMiles() ? "mph" : "km/h"}
        hint={text.speedHint(speedText(USUAL_SPEED, distanceOf(settings.value.running)))}
      />
    </Fold>
  );
}
