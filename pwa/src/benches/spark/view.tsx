import { Fold } from "../../controls/fold.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { PowerField } from "../../controls/power-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { parseAngle } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { empty, LISTS, type Place, text } from "./meta.ts";

export function SparkView() {
  const on = useBench("spark", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="range_deg"
      quantity="range_deg"
      withDrive={false}
      saveLabel={text.save}
    >
      <SparkForm {...on} />
    </BenchLayout>
  );
}

function SparkForm({ draft, change, problemAt }: FormProps) {
  const place = draft.fields.place as Place;
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <p class="how">{text.how}</p>
      <p class="panel cautions">{text.mind}</p>
      <Segments label={text.place} ways={text.places} chosen={place} onChoose={set("place")} />
      {(["before", "after"] as const).map((when) => {
        const field = LISTS[place][when];
        return (
          <ReadingsField
            key={field}
            field={field}
            label={text.reading[when]}
            kind="angle"
            {...readingsOf(draft, field)}
            onChange={(part) => change(withReadings(draft, field, part))}
            hint={text.readingHint}
            problem={problemAt(field)?.text}
          />
        );
      })}
      <PlainField
        field="resolution_deg"
        label={text.resolution}
        value={draft.fields.resolution_deg ?? ""}
        onValue={set("resolution_deg")}
        parse={parseAngle}
        inputMode="decimal"
        unit="°"
        hint={text.resolutionHint}
        problem={problemAt("resolution_deg")?.text}
      />
      <Fold
        title={text.more}
        open={Boolean(draft.fields.peak_power_kw || draft.fields.away_from_best_deg)}
      >
        <PowerField
          field="peak_power_kw"
          label={text.power}
          value={draft.fields.peak_power_kw ?? ""}
          onValue={set("peak_power_kw")}
          hint={text.powerHint}
          problem={problemAt("peak_power_kw")?.text}
        />
        <PlainField
          field="away_from_best_deg"
          label={text.away}
          value={draft.fields.away_from_best_deg ?? ""}
          onValue={set("away_from_best_deg")}
          parse={parseAngle}
          inputMode="decimal"
          unit="°"
          hint={text.awayHint}
          problem={problemAt("away_from_best_deg")?.text}
        />
      </Fold>
    </>
  );
}
