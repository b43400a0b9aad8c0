import { Choice } from "../controls/choice.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { TemperatureField } from "../controls/temperature-field.tsx";
import type { useDraft } from "../shelf/use-draft.ts";
import { parseNumber } from "../units/parse.ts";
import { PRESSURES } from "./air.ts";
import { text } from "./strings.ts";

/** The air of a run. Where it was copied forward, that is said until it was read again. */
export function AirFields({ form }: { form: ReturnType<typeof useDraft> }) {
  const { draft, put } = form;
  // Whatever is typed was read for this run.
  const set = (field: string) => (value: string) => put({ [field]: value, copied: "" });
  const sea = draft.pressure_kind === "sea-level";
  return (
    <fieldset class="air">
      <legend>{text.airTitle}</legend>
      {draft.copied ? (
        <p class="notice" role="status">
          {text.airCopied(Number(draft.copied))}{" "}
          <button type="button" class="button" onClick={() => put({ copied: "" })}>
            {text.airReadAgain}
          </button>
        </p>
      ) : null}
      <TemperatureField
        field="air_temperature"
        label={text.airTemperature}
        value={draft.temperature ?? ""}
        onValue={set("temperature")}
      />
      <PlainField
        field="barometer"
        label={text.pressure}
        value={draft.pressure ?? ""}
        onValue={set("pressure")}
        parse={parseNumber}
        inputMode="decimal"
      >
        <select
          aria-label={text.pressureUnit}
          value={draft.pressure_unit ?? "hPa"}
          onChange={(event) => put({ pressure_unit: event.currentTarget.value })}
        >
          {Object.keys(PRESSURES).map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </PlainField>
      <Choice
        name="pressure_kind"
        legend={text.pressureKind}
        options={[
          { id: "station", label: text.station },
          { id: "sea-level", label: text.seaLevel },
        ]}
        value={draft.pressure_kind ?? "station"}
        onValue={set("pressure_kind")}
      />
      <PlainField
        field="altitude"
        label={text.altitude}
        value={draft.altitude ?? ""}
        onValue={(altitude) => put({ altitude })}
        parse={parseNumber}
        inputMode="decimal"
        unit={text.altitudeUnit}
        hint={sea ? text.altitudeNeeded : text.altitudeCheck}
      />
      <PlainField
        field="humidity"
        label={text.humidity}
        value={draft.humidity ?? ""}
        onValue={set("humidity")}
        parse={parseNumber}
        inputMode="decimal"
        unit="%"
      />
      <TemperatureField
        field="oil_temperature"
        label={text.oil}
        value={draft.oil ?? ""}
        onValue={set("oil")}
        hint={text.factorsIgnore}
      />
      <TemperatureField
        field="water_temperature"
        label={text.water}
        value={draft.water ?? ""}
        onValue={set("water")}
      />
    </fieldset>
  );
}

/** What the dyno's figures are: as read, or by which standard. */
export function FiguresAre({ value, onValue }: { value: string; onValue(id: string): void }) {
  const options = [
    { id: "observed", label: text.observed },
    ...Object.entries(text.standards).map(([id, name]) => ({ id, label: text.alreadyBy(name) })),
  ];
  return (
    <>
      <Select
        field="figures_are"
        label={text.figuresAre}
        value={value}
        options={options}
        onValue={onValue}
      />
      <p class="small how">{text.figuresHint}</p>
    </>
  );
}
