import { currentEngine } from "../store/settings.ts";
import type { FormProps } from "./bench.ts";
import { withField } from "./draft.ts";

interface Props extends FormProps {
  withDrive: boolean;
  label(engine: string): string;
}

/** Whether the chosen engine's drive is meant, on a bench that can do without one. */
export function UseDrive({ stand, change, withDrive, label }: Props) {
  if (!stand.drive) return null;
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={withDrive}
        onChange={(event) =>
          change(withField("without_drive", event.currentTarget.checked ? "" : "yes"))
        }
      />
      {label(currentEngine.value?.name ?? "")}
    </label>
  );
}
