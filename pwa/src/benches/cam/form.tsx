import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { trimmed } from "../../units/format.ts";
import type { FormProps } from "../bench.ts";
import { InstrumentFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { fieldOf, referenceOf, wheelOf, wornChain } from "./ask.ts";
import { CardFold } from "./card-fold.tsx";
import { type EventMeta, events, heights, type Lobe, references, text, type Way } from "./meta.ts";
import { TdcFields } from "./tdc-fields.tsx";

export function CamForm(props: FormProps) {
  const { draft, change, problemAt, stand } = props;
  const lobe = draft.fields.lobe as Lobe;
  const way = draft.fields.way as Way;
  const set = (field: string) => (value: string) => change(withField(field, value));
  const worn = stand.drive ? wornChain(stand) : null;
  return (
    <>
      <TdcFields {...props} />
      <Segments label={text.way} ways={text.ways} chosen={way} onChoose={set("way")} />
      <p class="how">
        {text.how[way]} {way === "nose" && <span class="small">({text.howSource})</span>}
      </p>
      <Segments label={text.lobe} ways={text.lobes} chosen={lobe} onChoose={set("lobe")} />
      {events
        .filter((event) => event.lobe === lobe && event.way === way)
        .map((event) => (
          <EventField key={event.id} event={event} {...props} />
        ))}
      {way === "events" ? (
        <Height {...props} />
      ) : (
        <LengthField
          field="nose_drop_mm"
          label={text.drop}
          value={draft.fields.nose_drop_mm ?? ""}
          onValue={set("nose_drop_mm")}
          problem={problemAt("nose_drop_mm")?.text}
        />
      )}
      <CardFold {...props} />
      {worn && (
        <label class="check">
          <input
            type="checkbox"
            checked={draft.fields.without_chain !== "yes"}
            onChange={(event) => set("without_chain")(event.currentTarget.checked ? "" : "yes")}
          />
          {text.chain(trimmed(worn.percent, 3))}
        </label>
      )}
      <Fold title={text.more}>
        <Select
          field="cams"
          label={text.cams}
          value={draft.fields.cams ?? "one"}
          options={text.camKinds}
          onValue={set("cams")}
        />
        <Select
          field="centreline_by"
          label={text.by}
          value={draft.fields.centreline_by ?? ""}
          options={text.byKinds}
          onValue={set("centreline_by")}
        />
        <LengthField
          field="dial_error_mm"
          label={text.dial}
          value={draft.fields.dial_error_mm ?? ""}
          onValue={set("dial_error_mm")}
          problem={problemAt("dial_error_mm")?.text}
        />
      </Fold>
      <InstrumentFold {...props} kind="wheel" suffix="deg" />
    </>
  );
}

/** The readings of one event, and the dead centre that they are counted from. */
function EventField({ event, draft, change }: FormProps & { event: EventMeta }) {
  const field = fieldOf(event);
  const raw = wheelOf(draft) !== "both-ways";
  return (
    <div class="event-field">
      <ReadingsField
        field={field}
        label={event.label}
        kind="angle"
        {...readingsOf(draft, field)}
        onChange={(part) => change(withReadings(draft, field, part))}
        hint={raw ? text.raw : undefined}
      />
      {!raw && (
        <Select
          field={`${event.id}_from`}
          label={`${text.from}: ${event.label}`}
          value={referenceOf(draft, event)}
          options={references}
          onValue={(value) => change(withField(`${event.id}_from`, value))}
        />
      )}
    </div>
  );
}

function Height({ draft, change, problemAt }: FormProps) {
  const typed = draft.fields.checking_height_mm ?? "";
  const set = (field: string) => (value: string) => change(withField(field, value));
  return (
    <>
      <LengthField
        field="checking_height_mm"
        label={text.height}
        value={typed}
        onValue={set("checking_height_mm")}
        hint={text.heightHint}
        problem={problemAt("checking_height_mm")?.text}
      />
      <fieldset class="segments" aria-label={text.height}>
        {heights.map((one) => (
          <button
            key={one.typed}
            type="button"
            aria-pressed={typed === one.typed}
            onClick={() => set("checking_height_mm")(one.typed)}
          >
            {one.label}
          </button>
        ))}
      </fieldset>
      <Select
        field="checking_at"
        label={text.heightAt}
        value={draft.fields.checking_at ?? "tappet"}
        options={text.heightPlaces}
        onValue={set("checking_at")}
      />
    </>
  );
}
