import { Fold } from "../controls/fold.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { limits } from "../core/terms.ts";
import { originText } from "../result/origin.tsx";
import { unitOf } from "../store/settings.ts";
import { lengthText } from "../units/format.ts";
import type { FormProps } from "./bench.ts";
import { withField } from "./draft.ts";
import { text } from "./strings.ts";

const FIELDS = ["window_lower_mm", "window_upper_mm"] as const;

/** The movement that is wanted, if it is not the trade's. */
export function WindowFold({ draft, change, problemAt }: FormProps) {
  const trade = limits.find((one) => one.id === "slack-window");
  const ends = { window_lower_mm: trade?.lower, window_upper_mm: trade?.upper };
  return (
    <Fold title={text.window} open={FIELDS.some((field) => draft.fields[field])}>
      {FIELDS.map((field) => {
        const end = ends[field];
        return (
          <LengthField
            key={field}
            field={field}
            label={text.windowEnd[field]}
            value={draft.fields[field] ?? ""}
            onValue={(value) => change(withField(field, value))}
            hint={
              trade && typeof end === "number"
                ? text.leftEmptyOf(lengthText(end, unitOf(field)), originText(trade.origin))
                : undefined
            }
            problem={problemAt(field)?.text}
          />
        );
      })}
    </Fold>
  );
}
