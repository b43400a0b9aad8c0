import { PlainField } from "../../controls/plain-field.tsx";
import { Select } from "../../controls/select.tsx";
import { materials } from "../../core/terms.ts";
import { OriginBadge, Source } from "../../result/origin.tsx";
import { trimmed } from "../../units/format.ts";
import { parseNumber } from "../../units/parse.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { type BlockPart, OWN, text } from "./meta.ts";

interface Props extends FormProps {
  part: BlockPart;
  /** Without the list: the material was chosen elsewhere. */
  bare?: boolean;
}

/** What a part is made of: from the table, with its source, or a figure of the user's own. */
export function MaterialField(props: Props) {
  const { draft, change, problemAt, assumed, part, bare = false } = props;
  const field = `${part}_material`;
  const chosen = draft.fields[field] ?? "";
  const material = materials.find((one) => one.id === chosen);
  const own = `${part}_expansion_ppm`;
  const usual = assumed(own);
  return (
    <>
      {!bare && (
        <Select
          field={field}
          label={text.material[part]}
          value={chosen}
          options={[
            ...(part === "block" ? [] : [{ id: "", label: text.materialUnknown }]),
            ...materials.map(({ id, label }) => ({ id, label })),
            { id: OWN, label: text.materialOwn },
          ]}
          onValue={(id) => change(withField(field, id))}
        />
      )}
      {chosen === "" && usual && (
        <p class="note material">
          {usual.text}{" "}
          <strong class="num">
            {trimmed(Number(usual.value), 2)} {text.perKelvin}
          </strong>{" "}
          <OriginBadge origin={usual.origin} />
        </p>
      )}
      {material && (
        <p class="note material">
          <strong class="num">
            {trimmed(material.expansion_ppm, 2)} {text.perKelvin}
          </strong>{" "}
          <OriginBadge origin={material.origin} />{" "}
          <Source source={material.source} address={material.address} />
        </p>
      )}
      {chosen === OWN && (
        <PlainField
          field={own}
          label={text.expansion}
          value={draft.fields[own] ?? ""}
          onValue={(value) => change(withField(own, value))}
          parse={parseNumber}
          inputMode="decimal"
          unit={text.perKelvin}
          problem={problemAt(own)?.text}
        />
      )}
    </>
  );
}

/** Where the user's own coefficients come from. */
export function OwnSource({ draft, change, problemAt }: FormProps) {
  return (
    <PlainField
      field="expansion_source"
      label={text.source}
      value={draft.fields.expansion_source ?? ""}
      onValue={(value) => change(withField("expansion_source", value))}
      hint={text.sourceHint}
      problem={problemAt("expansion_source")?.text}
    />
  );
}
