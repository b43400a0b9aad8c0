import { Choice } from "../controls/choice.tsx";
import type { Session } from "../store/records.ts";
import { text } from "./strings.ts";

interface Props {
  session: Session;
  value: string;
  onValue(key: string): void;
}

/** Which setting of the session a run was made at. */
export function SettingPick({ session, value, onValue }: Props) {
  return (
    <Choice
      name="setting"
      legend={text.whichSetting}
      options={session.settings.map(({ key, label }) => ({ id: key, label: `${key}: ${label}` }))}
      value={value}
      onValue={onValue}
    />
  );
}
