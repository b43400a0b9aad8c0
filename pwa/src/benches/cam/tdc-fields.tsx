import { Fold } from "../../controls/fold.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { fixed } from "../../units/format.ts";
import { parseAngle } from "../../units/parse.ts";
import { whenText } from "../../units/when.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { lastTdc } from "../last-tdc.ts";
import { scales } from "../tdc/meta.ts";
import { tdcFrom } from "./ask.ts";
import { text } from "./meta.ts";

/** Where true TDC comes from: what was saved, with the wheel as it was or set right since. */
export function TdcFields(props: FormProps) {
  const { draft, change, problemAt } = props;
  const last = lastTdc();
  const from = tdcFrom(draft);
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <section class="panel">
      <h2>{text.tdc}</h2>
      {last ? (
        <Segments label={text.tdc} ways={text.tdcFrom} chosen={from} onChoose={set("tdc")} />
      ) : (
        <>
          <p>{text.tdcNone}</p>
          <a class="button button-wide" href="#/tdc">
            {text.findTdc}
          </a>
        </>
      )}
      {last && from !== "typed" && (
        <p class="how">
          {from === "last"
            ? text.tdcLast(
                `${fixed(last.result.measured.value, 2)}° ± ${fixed(last.result.measured.expanded_uncertainty, 2)}°`,
                whenText(last.reading.taken_at),
              )
            : text.tdcMoved(
                `${fixed(last.result.measured.expanded_uncertainty, 2)}°`,
                whenText(last.reading.taken_at),
              )}
        </p>
      )}
      {from === "typed" && (
        <Fold title={text.tdcFrom.typed} open={last !== null}>
          {(["tdc_reading_deg", "tdc_plus_minus_deg"] as const).map((field) => (
            <PlainField
              key={field}
              field={field}
              label={field === "tdc_reading_deg" ? text.tdcReading : text.tdcPlusMinus}
              value={draft.fields[field] ?? ""}
              onValue={set(field)}
              parse={parseAngle}
              inputMode="text"
              unit="°"
              hint={field === "tdc_reading_deg" ? text.tdcHint : undefined}
              problem={problemAt(field)?.text}
            />
          ))}
          <Select
            field="wheel"
            label={text.wheel}
            value={draft.fields.wheel ?? "both-ways"}
            options={Object.entries(scales).map(([id, { label }]) => ({ id, label }))}
            onValue={set("wheel")}
          />
        </Fold>
      )}
    </section>
  );
}
