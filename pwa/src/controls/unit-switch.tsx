import { change, settings, setUnit, unitOf } from "../store/settings.ts";
import type { DistanceUnit } from "../units/distance.ts";
import type { LengthUnit } from "../units/parse.ts";
import { POWER_SIGNS, type PowerUnit, TORQUE_SIGNS, type TorqueUnit } from "../units/power.ts";
import { distanceOf, RUNNING_UNITS, type RunningUnit } from "../units/running.ts";
import { SIGNS, type TemperatureUnit } from "../units/temperature.ts";
import { text } from "./strings.ts";

/** Inches or millimetres for one field; remembered. */
export function UnitSwitch({ field, label }: { field: string; label: string }) {
  return (
    <Units
      label={label}
      units={{ in: "in", mm: "mm" }}
      now={unitOf(field)}
      choose={(unit: LengthUnit) => setUnit(field, unit)}
    />
  );
}

/** Celsius or Fahrenheit, for every temperature; remembered. */
export function TemperatureSwitch({ label }: { label: string }) {
  return (
    <Units
      label={label}
      units={SIGNS}
      now={settings.value.temperature}
      choose={(temperature: TemperatureUnit) => change({ temperature })}
    />
  );
}

/** Miles, kilometres or hours of running; remembered. */
export function RunningSwitch({ label }: { label: string }) {
  return (
    <Units
      label={label}
      units={RUNNING_UNITS}
      now={settings.value.running}
      choose={(running: RunningUnit) => change({ running })}
    />
  );
}

/** Horsepower, kilowatts or metric horsepower, for every power; remembered. */
export function PowerSwitch({ label }: { label: string }) {
  return (
    <Units
      label={label}
      units={POWER_SIGNS}
      now={settings.value.power}
      choose={(power: PowerUnit) => change({ power })}
    />
  );
}

/** Miles or kilometres only, as an odometer counts. */
export function DistanceSwitch({ label }: { label: string }) {
  return (
    <Units
      label={label}
      units={{ mi: "mi", km: "km" }}
      now={distanceOf(settings.value.running)}
      choose={(running: DistanceUnit) => change({ running })}
    />
  );
}

/** Newton metres or pound-force feet, for every torque; remembered. */
export function TorqueSwitch({ label }: { label: string }) {
  return (
    <Units
      label={label}
      units={TORQUE_SIGNS}
      now={settings.value.torque}
      choose={(torque: TorqueUnit) => change({ torque })}
    />
  );
}

interface UnitsProps<U extends string> {
  label: string;
  /** What each unit shows as. */
  units: Record<U, string>;
  now: U;
  choose(unit: U): void;
}

function Units<U extends string>({ label, units, now, choose }: UnitsProps<U>) {
  return (
    <fieldset class="unit-switch" aria-label={text.unitOf(label)}>
      {(Object.keys(units) as U[]).map((unit) => (
        <button key={unit} type="button" aria-pressed={unit === now} onClick={() => choose(unit)}>
          {units[unit]}
        </button>
      ))}
    </fieldset>
  );
}
