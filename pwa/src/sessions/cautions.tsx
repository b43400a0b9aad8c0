import { useEffect, useState } from "preact/hooks";
import { Fold } from "../controls/fold.tsx";
import { asRead } from "../core/as-read.ts";
import { run } from "../core/client.ts";
import type { CorrectionResult } from "../core/results.ts";
import { Founded } from "../result/notes.tsx";
import { text } from "./strings.ts";

/** Any air will do: the cautions are those of the core's calculation for the dyno. */
const ANY_AIR = {
  air_temperature_c: 25,
  barometer_kpa: 99,
  pressure_kind: "station",
  relative_humidity_percent: 0,
} as const;

/** What to mind on a dyno, from the core's own list. */
export function Cautions() {
  const [said, setSaid] = useState<CorrectionResult["cautions"]>([]);
  useEffect(() => {
    void run("correction", { conditions: ANY_AIR }).then(
      (answer) => answer.ok && setSaid(asRead(answer.result.cautions)),
      () => {}, // the shell says why the core cannot run
    );
  }, []);
  if (said.length === 0) return null;
  return (
    <section class="panel cautions">
      <Fold title={text.cautions} open>
        <ul>
          {said.map((one) => (
            <li key={one.code}>
              {one.text} <Founded on={one} />
            </li>
          ))}
        </ul>
      </Fold>
    </section>
  );
}
