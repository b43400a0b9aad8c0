import { asRead } from "../core/as-read.ts";
import type { Limit } from "../core/results.ts";
import { Source } from "../result/origin.tsx";
import type { Reading } from "../store/records.ts";
import { glanceOf } from "./item.tsx";
import { text } from "./sheet-strings.ts";

/** What can hurt, and what was worth knowing of the readings. */
export function Cautions({ readings }: { readings: Reading[] }) {
  const said = new Map<string, string>();
  for (const { result: kept, input } of readings) {
    const result = asRead(kept, input);
    for (const one of [...(result.cautions ?? []), ...(result.warnings ?? [])]) {
      if (!text.usual.includes(one.text)) said.set(one.code, one.text);
    }
  }
  return (
    <section>
      <h2>{text.cautions}</h2>
      <p>{text.usual}</p>
      <ul>
        {[...said].map(([code, words]) => (
          <li key={code}>{words}</li>
        ))}
      </ul>
    </section>
  );
}

/** What each mark means, and the sources of the limits that were used. */
export function Origins({ readings }: { readings: Reading[] }) {
  const limits = new Map<string, Limit>();
  for (const reading of readings) {
    const { limit } = glanceOf(reading);
    if (limit && (limit.source || limit.note)) limits.set(limit.id, limit);
  }
  const versions = [...new Set(readings.map((one) => one.core_version))].sort().join(", ");
  return (
    <section>
      <h2>{text.origins}</h2>
      <p>{text.coverage}</p>
      <ul>
        {text.originsMean.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <p>
        {text.typed} {versions && text.versions(versions)}
      </p>
      {limits.size > 0 && (
        <>
          <h3>{text.sources}</h3>
          <ul>
            {[...limits.values()].map((one) => (
              <li key={one.id}>
                <strong>{one.label}.</strong> <Source source={one.source} address={one.address} />{" "}
                {one.note}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
