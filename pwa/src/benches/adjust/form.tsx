import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { trimmed } from "../../units/format.ts";
import { parseAngle, parseCount, parseNumber } from "../../units/parse.ts";
import { whenText } from "../../units/when.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { countOf, lobeOf, named, taken } from "./ask.ts";
import { kinds, MOST, text, units } from "./meta.ts";

export function AdjustForm(props: FormProps) {
  const { draft, change, problemAt, stand } = props;
  const lobe = lobeOf(draft);
  const other = lobe === "intake" ? "exhaust" : "intake";
  const known = taken();
  const count = countOf(draft);
  const set = (field: string) => (value: string) => change(withField(field, value));
  const angle = (field: string, label: string) => {
    const value = known?.values[field];
    return (
      <PlainField
        key={field}
        field={field}
        label={label}
        value={draft.fields[field] ?? ""}
        onValue={set(field)}
        parse={parseAngle}
        inputMode="decimal"
        unit="°"
        hint={value === undefined ? undefined : text.taken(`${trimmed(value, 2)}°`)}
        problem={problemAt(field)?.text}
      />
    );
  };
  const teeth = stand.gears?.crank_teeth ?? stand.drive?.crank_teeth;
  return (
    <>
      <section class="panel">
        <h2>{text.measured}</h2>
        {known ? (
          <p class="how">{text.from(whenText(known.when))}</p>
        ) : (
          <>
            <p>{text.noCam}</p>
            <a class="button button-wide" href="#/cam">
              {text.findCam}
            </a>
          </>
        )}
        <Segments label={text.lobe} ways={text.lobes} chosen={lobe} onChoose={set("lobe")} />
        {angle(`${lobe}_centreline_deg`, text.centre[lobe])}
        {angle("target_deg", text.target)}
        <Fold title={text.others}>
          {angle("plus_minus_deg", text.plusMinus)}
          {angle("tolerance_deg", text.tolerance)}
          {angle(`${lobe}_duration_deg`, text.duration[lobe])}
          {angle(`${other}_centreline_deg`, text.centre[other])}
          {angle(`${other}_duration_deg`, text.duration[other])}
          <Select
            field="cams"
            label={text.cams}
            value={draft.fields.cams ?? "one"}
            options={text.camKinds}
            onValue={set("cams")}
          />
        </Fold>
      </section>
      <p class="how">{text.rotation}</p>
      <Segments
        label={text.rotation}
        ways={text.rotations}
        chosen={draft.fields.rotation ?? "clockwise"}
        onChoose={set("rotation")}
      />
      <Select
        field="cam_turns"
        label={text.turns}
        value={draft.fields.cam_turns ?? "same"}
        options={text.turnKinds}
        onValue={set("cam_turns")}
      />
      {Array.from({ length: count }, (_, at) => (
        <AdjusterFields key={named(at, "kind")} at={at} {...props} />
      ))}
      {count < MOST && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => set("count")(String(count + 1))}
        >
          {text.add}
        </button>
      )}
      <PlainField
        field="crank_teeth"
        label={text.teeth}
        value={draft.fields.crank_teeth ?? ""}
        onValue={set("crank_teeth")}
        parse={parseCount}
        inputMode="numeric"
        hint={teeth ? text.teethHint(teeth) : undefined}
        problem={problemAt("crank_teeth")?.text}
      />
    </>
  );
}

/** One thing to set the cam by; its unit is never assumed. */
function AdjusterFields({ at, draft, stand, change }: FormProps & { at: number }) {
  const typed = (field: string) => draft.fields[named(at, field)] ?? "";
  const set = (field: string) => (value: string) => change(withField(named(at, field), value));
  const kind = typed("kind") || "bushings";
  const offsets = stand.gears?.keyway_offsets_crank_deg;
  const last = at === countOf(draft) - 1;
  const number = (field: string, label: string, hint?: string) => (
    <PlainField
      field={`${field}_${at}`}
      label={label}
      value={typed(field)}
      onValue={set(field)}
      parse={parseNumber}
      inputMode="text"
      hint={hint}
    />
  );
  return (
    <fieldset class="panel adjuster">
      <legend>{text.adjuster(at + 1)}</legend>
      <Select
        field={`kind_${at}`}
        label={text.kind}
        value={kind}
        options={kinds}
        onValue={set("kind")}
      />
      {kind !== "teeth" && (
        <>
          <Select
            field={`unit_${at}`}
            label={text.unit}
            value={typed("unit")}
            options={units}
            onValue={set("unit")}
          />
          <p class="how">{text.unitWhy}</p>
          {typed("unit").startsWith("mm") && (
            <LengthField
              field={`radius_mm_${at}`}
              label={text.radius}
              value={typed("radius_mm")}
              onValue={set("radius_mm")}
            />
          )}
          {kind === "vernier" ? (
            <>
              {number("reach", text.reach)}
              {number("mark", text.mark)}
            </>
          ) : (
            <>
              <PlainField
                field={`steps_${at}`}
                label={text.steps}
                value={typed("steps")}
                onValue={set("steps")}
                hint={text.stepsHint}
              />
              {kind === "keyways" && offsets && offsets.length > 0 && (
                <button
                  type="button"
                  class="button button-wide"
                  onClick={() =>
                    change({
                      fields: {
                        [named(at, "steps")]: offsets.join(" "),
                        [named(at, "unit")]: "crank-deg",
                      },
                    })
                  }
                >
                  {text.useKeyways}
                </button>
              )}
              <label class="check">
                <input
                  type="checkbox"
                  checked={typed("both") === "yes"}
                  onChange={(event) => set("both")(event.currentTarget.checked ? "yes" : "")}
                />
                {text.both}
              </label>
            </>
          )}
          {number("fitted", text.fitted, text.fittedHint)}
        </>
      )}
      {last && at > 0 && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => change(withField("count", String(at)))}
        >
          {text.remove}
        </button>
      )}
    </fieldset>
  );
}
