import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Segments } from "../controls/segments.tsx";
import { DistanceSwitch, RunningSwitch } from "../controls/unit-switch.tsx";
import { currentBuild, settings } from "../store/settings.ts";
import { distanceOf, parseRunning, ranText } from "../units/running.ts";
import type { FormProps } from "./bench.ts";
import { withField } from "./draft.ts";
import { byOdometer } from "./running.ts";
import { text } from "./strings.ts";

/** How far the chain has run when it is read, for the forecast. */
export function RunningFold({ draft, change }: FormProps) {
  const typed = draft.fields.ran ?? "";
  const odometer = byOdometer(draft);
  const { running } = settings.value;
  const unit = odometer ? distanceOf(running) : running;
  return (
    <Fold title={text.running} open={typed !== ""}>
      <p class="note">{text.runningWhy}</p>
      <Segments
        label={text.runningBy}
        ways={text.runningWays}
        chosen={odometer ? "odometer" : "start"}
        onChoose={(id) => change(withField("ran_by", id))}
      />
      <PlainField
        field="ran"
        label={odometer ? text.odometer : text.ran}
        value={typed}
        onValue={(value) => change(withField("ran", value))}
        parse={(words) => parseRunning(words, unit)}
        inputMode="decimal"
        hint={odometer ? sinceStart(typed) : text.ranHint}
        maxLength={30}
      >
        {odometer ? <DistanceSwitch label={text.odometer} /> : <RunningSwitch label={text.ran} />}
      </PlainField>
    </Fold>
  );
}

/** What an odometer comes to in the build in hand. */
function sinceStart(typed: string): string {
  const { running } = settings.value;
  const start = currentBuild.value?.odometer_km;
  if (typeof start !== "number") return text.odometerUnknown;
  const read = parseRunning(typed, distanceOf(running));
  if (!read.ok || "hours" in read.ran) return "";
  return read.ran.km < start
    ? text.odometerBack(ranText({ km: start }, running))
    : text.odometerAt(ranText({ km: read.ran.km - start }, running));
}
