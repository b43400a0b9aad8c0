import { Choice } from "../controls/choice.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { TemperatureField } from "../controls/temperature-field.tsx";
import type { Typed, useDraft } from "../shelf/use-draft.ts";
import { settings } from "../store/settings.ts";
import { parseNumber } from "../units/parse.ts";
import { altitudeUnit, PRESSURES, parseAltitude } from "./air.ts";
import { text } from "./strings.ts";

interface Props {
  form: ReturnType<typeof useDraft>;
  /** What a file tells in place of fields; what was typed there stays behind it. */
  file?: Typed;
}

/** The air of a run. Where it was copied forward, that is said until it was read again. */
export function AirFields({ form, file = {} }: Props) {
  const { draft, put } = form;
  const { length } = settings.value;
  // Whatever is typed was read for this run.
  const set = (field: string) => (value: string) => put({ [field]: value, copied: "" });
  const field = (name: string, hint?: string) => {
    const typed = draft[name] ?? "";
    const told = file[name];
    return told === undefined
      ? { value: typed, onValue: set(name), hint }
      : { value: told, onValue: set(name), hint: text.fromTheFile(typed.trim()), readOnly: true };
  };
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
        {...field("temperature")}
      />
      <PlainField
        field="barometer"
        label={text.pressure}
        {...field("pressure")}
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
        parse={(typed) => parseAltitude(typed, length)}
        inputMode="decimal"
        unit={altitudeUnit(length)}
        hint={sea ? text.altitudeNeeded : text.altitudeCheck}
      />
      <PlainField
        field="humidity"
        label={text.humidity}
        {...field("humidity")}
        parse={parseNumber}
        inputMode="decimal"
        unit="%"
      />
      <TemperatureField
        field="oil_temperature"
        label={text.oil}
        {...field("oil", text.factorsIgnore)}
      />
      <TemperatureField field="water_temperature" label={text.water} {...field("water")} />
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
