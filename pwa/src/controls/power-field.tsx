import { settings } from "../store/settings.ts";
import { type PowerUnit, parsePower, powerText } from "../units/power.ts";
import { PlainField } from "./plain-field.tsx";
import { text } from "./strings.ts";
import { PowerSwitch } from "./unit-switch.tsx";

interface Props {
  field: string;
  label: string;
  value: string;
  onValue(value: string): void;
  hint?: string | undefined;
  problem?: string | undefined;
}

/** What the others of the three call it. */
const OTHERS: Record<PowerUnit, PowerUnit> = { hp: "kW", kW: "hp", PS: "kW" };

/** One power, in the unit that all powers have; what it was read as stands under it. */
export function PowerField(props: Props) {
  const unit = settings.value.power;
  const read = props.value.trim() === "" ? null : parsePower(props.value, unit);
  const echo = read?.ok
    ? `${text.readAs} ${powerText(read.value, unit)}, ${powerText(read.value, OTHERS[unit])}`
    : props.hint;
  return (
    <PlainField
      {...props}
      hint={echo}
      parse={(typed) => parsePower(typed, unit)}
      inputMode="decimal"
    >
      <PowerSwitch label={props.label} />
    </PlainField>
  );
}
