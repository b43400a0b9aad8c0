import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { parseNumber } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { PLACES, text } from "./meta.ts";

/** Ratio and lash of up to three rockers. */
export function RockerFields({ draft, change }: FormProps) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      {PLACES.map((place) => (
        <fieldset class="group" key={place}>
          <legend class="visually-hidden">{text.place[place]}</legend>
          <PlainField
            field={`ratio_${place}`}
            label={text.ratio(text.place[place])}
            value={draft.fields[`ratio_${place}`] ?? ""}
            onValue={set(`ratio_${place}`)}
            parse={parseNumber}
            inputMode="decimal"
            hint={place === "one" ? undefined : text.leftEmpty}
          />
          <LengthField
            field={`lash_${place}_mm`}
            label={text.lash(text.place[place])}
            value={draft.fields[`lash_${place}_mm`] ?? ""}
            onValue={set(`lash_${place}_mm`)}
            hint={text.lashHint}
          />
        </fieldset>
      ))}
    </>
  );
}
