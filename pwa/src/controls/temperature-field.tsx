import { settings } from "../store/settings.ts";
import { parseTemperature, SIGNS } from "../units/temperature.ts";
import { PlainField } from "./plain-field.tsx";

interface Props {
  field: string;
  label: string;
  value: string;
  onValue(value: string): void;
  hint?: string | undefined;
  problem?: string | undefined;
  readOnly?: boolean;
}

/** One temperature, in the unit that all temperatures have. */
export function TemperatureField(props: Props) {
  const unit = settings.value.temperature;
  return (
    <PlainField
      {...props}
      parse={(text) => parseTemperature(text, unit)}
      inputMode="decimal"
      unit={SIGNS[unit]}
    />
  );
}
