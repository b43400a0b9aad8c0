import { withField } from "../../benches/draft.ts";
import { Heating } from "../../benches/heat/heat-fields.tsx";
import { text as heat, OTHER, USUAL_BLOCKS } from "../../benches/heat/meta.ts";
import { WindowFold } from "../../benches/window-fold.tsx";
import { Choice } from "../../controls/choice.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { ownWindow } from "./ask.ts";
import { text } from "./strings.ts";
import type { OnFit } from "./use-fit.ts";

/** What the table is judged by: hot or cold, and the movement wanted; kept for the engine. */
export function Settings({ on }: { on: OnFit }) {
  const { draft, change } = on;
  const block = draft.fields.block_material ?? "";
  const usual = USUAL_BLOCKS.includes(block);
  return (
    <section class="panel" aria-label={text.settings}>
      <h2>{text.settings}</h2>
      <Choice
        name="fit-block"
        legend={text.judge}
        value={block === "" || usual ? block : "other"}
        onValue={(id) => change(withField("block_material", id === "other" ? OTHER : id))}
        options={[
          { id: "", label: text.coldOnly },
          ...USUAL_BLOCKS.map((id) => ({ id, label: text.hotIn(heat.blockUsual[id] ?? id) })),
          { id: "other", label: text.hotIn(heat.blockOther) },
        ]}
      />
      {block !== "" && <Heating {...on} />}
      <WindowFold {...on} />
      {ownWindow(draft) && (
        <PlainField
          field="window_source"
          label={text.windowSource}
          value={draft.fields.window_source ?? ""}
          onValue={(value) => change(withField("window_source", value))}
          hint={text.windowSourceHint}
          maxLength={200}
        />
      )}
      <p class="small">{text.heatNote}</p>
    </section>
  );
}
