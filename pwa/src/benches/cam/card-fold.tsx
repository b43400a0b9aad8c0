import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { parseAngle } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { cardName } from "./ask.ts";
import { cardFields, text } from "./meta.ts";

/** The cam's data sheet, kept for the engine. */
export function CardFold({ draft, change, problemAt }: FormProps) {
  const typed = (field: string) => draft.fields[cardName(field)] ?? "";
  const set = (field: string) => (value: string) => change(withField(cardName(field), value));
  const open = cardFields.some(([field]) => typed(field) !== "");
  return (
    <Fold title={text.card} open={open}>
      <p class="note">{text.cardWhy}</p>
      <PlainField
        field="card_source"
        label={text.cardSource}
        value={typed("source")}
        onValue={set("source")}
        hint={text.cardSourceHint}
        problem={problemAt("card.source")?.text}
      />
      <LengthField
        field="card_checking_height_mm"
        label={text.cardHeight}
        value={typed("checking_height_mm")}
        onValue={set("checking_height_mm")}
        hint={text.cardHeightHint}
        problem={problemAt("card.checking_height_mm")?.text}
      />
      {cardFields.map(([field, label]) => (
        <PlainField
          key={field}
          field={`card_${field}`}
          label={label}
          value={typed(field)}
          onValue={set(field)}
          parse={parseAngle}
          inputMode="text"
          unit="°"
          problem={problemAt(`card.${field}`)?.text}
        />
      ))}
    </Fold>
  );
}
