/** The small forms beside the engine: why it was cut short, a value read, a note, another oil. */
import { useState } from "preact/hooks";
import { labelText, VALUES } from "../builds/stored.ts";
import { Choice } from "../controls/choice.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import type { PlanStep } from "../core/results.ts";
import type { Plan } from "../store/records.ts";
import { distanceUnit } from "../store/settings.ts";
import { parseDistance } from "../units/distance.ts";
import { parseNumber } from "../units/parse.ts";
import { text } from "./strings.ts";
import { type Told, tell } from "./use-plan.ts";
import type { OnRun } from "./use-run.ts";

export type SlipKind = "cut-short" | "skipped" | "value" | "note" | "distance" | "oil-changed";

interface Props {
  kind: SlipKind;
  plan: Plan;
  step: PlanStep;
  on: OnRun;
  close(): void;
}

type Typed = Record<string, string>;

export function Slip({ kind, plan, step, on, close }: Props) {
  const [typed, setTyped] = useState<Typed>({
    label: VALUES[0].label,
    unit: VALUES[0].unit,
    oil: plan.input.oil.kind,
  });
  const set = (field: string) => (value: string) => setTyped({ ...typed, [field]: value });
  const told = toldOf(kind, step, typed);
  const store = async () => {
    if (!told) return;
    const run = kind === "cut-short" ? { run_min: (await on.finish()) / 60_000 } : {};
    close();
    await tell(plan.id, { ...told, ...run });
  };
  return (
    <section class="slip" aria-label={TITLES[kind]}>
      <h2>{TITLES[kind]}</h2>
      {kind === "cut-short" && (
        <Choice
          name="reason"
          legend={text.why}
          options={Object.entries(text.reasons).map(([id, label]) => ({ id, label }))}
          value={typed.reason ?? ""}
          onValue={set("reason")}
        />
      )}
      {kind === "value" && <ValueFields typed={typed} set={set} put={setTyped} />}
      {kind === "oil-changed" && <OilFields typed={typed} set={set} />}
      {kind === "distance" && <DistanceField typed={typed} set={set} />}
      {(kind === "note" || kind === "cut-short" || kind === "skipped") && (
        <PlainField
          field="slip_text"
          label={text.say}
          value={typed.text ?? ""}
          onValue={set("text")}
          maxLength={1000}
        />
      )}
      <div class="run-actions">
        <button
          type="button"
          class="button button-main"
          disabled={!told}
          onClick={() => void store()}
        >
          {text.save}
        </button>
        <button type="button" class="button" onClick={close}>
          {text.cancel}
        </button>
      </div>
    </section>
  );
}

const TITLES: Record<SlipKind, string> = {
  "cut-short": text.cutShort,
  skipped: text.leaveOut,
  value: text.log,
  note: text.note,
  distance: text.distanceSoFar,
  "oil-changed": text.changeOil,
};

/** What is to be written down, or null while something is missing. */
function toldOf(kind: SlipKind, step: PlanStep, typed: Typed): Told | null {
  const words = typed.text?.trim();
  const said = words ? { text: words } : {};
  if (kind === "cut-short") {
    const reason = typed.reason as Told["reason"];
    return reason ? { kind, step: step.key, reason, ...said } : null;
  }
  if (kind === "skipped") return { kind, step: step.key, ...said };
  if (kind === "note") return words ? { kind, step: step.key, text: words } : null;
  if (kind === "value") {
    const read = parseNumber(typed.value ?? "");
    const label = typed.label?.trim();
    if (!read.ok || !label) return null;
    const named = typed.unit?.trim() ? { unit: typed.unit.trim() } : {};
    return { kind, step: step.key, label, value_read: read.value, ...named };
  }
  const km = parseDistance(typed.distance ?? "", distanceUnit());
  if (!km.ok) return null;
  if (kind === "distance") return { kind, step: step.key, distance_since_start_km: km.km };
  const oil = { kind: typed.oil as Plan["input"]["oil"]["kind"] };
  const grade = typed.grade?.trim();
  return {
    kind,
    oil: grade ? { ...oil, grade } : oil,
    distance_since_start_km: km.km,
  };
}

interface FieldsProps {
  typed: Typed;
  set(field: string): (value: string) => void;
}

function ValueFields({ typed, set, put }: FieldsProps & { put(typed: Typed): void }) {
  return (
    <>
      <Choice
        name="label"
        legend={text.what}
        options={VALUES.map(({ label }) => ({ id: label, label: labelText(label) }))}
        value={typed.label ?? ""}
        onValue={(label) => {
          put({ ...typed, label, unit: VALUES.find((one) => one.label === label)?.unit ?? "" });
        }}
      />
      <PlainField
        field="slip_value"
        label={text.value}
        value={typed.value ?? ""}
        onValue={set("value")}
        parse={parseNumber}
        inputMode="decimal"
      />
      <PlainField
        field="slip_unit"
        label={text.unit}
        value={typed.unit ?? ""}
        onValue={set("unit")}
        maxLength={20}
      />
    </>
  );
}

function OilFields({ typed, set }: FieldsProps) {
  return (
    <>
      <Choice
        name="oil"
        legend={text.oil}
        options={[...text.oils]}
        value={typed.oil ?? ""}
        onValue={set("oil")}
      />
      <PlainField
        field="slip_grade"
        label={text.grade}
        value={typed.grade ?? ""}
        onValue={set("grade")}
        maxLength={12}
      />
      <DistanceField typed={typed} set={set} />
    </>
  );
}

/** How far it has run since its first start. */
function DistanceField({ typed, set }: FieldsProps) {
  const distance = distanceUnit();
  return (
    <PlainField
      field="slip_distance"
      label={text.distanceNow}
      value={typed.distance ?? ""}
      onValue={set("distance")}
      parse={(typing) => parseDistance(typing, distance)}
      unit={distance}
    />
  );
}
