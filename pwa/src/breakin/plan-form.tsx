import { Choice } from "../controls/choice.tsx";
import { Fold } from "../controls/fold.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { run } from "../core/client.ts";
import { useLatest } from "../core/latest.ts";
import type { Problem } from "../core/results.ts";
import { coreVersion } from "../core/terms.ts";
import { useDraft } from "../shelf/use-draft.ts";
import { Back } from "../shell/back.tsx";
import { useOnce } from "../shell/once.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import { currentBuild, currentEngine, distanceUnit, unitOf } from "../store/settings.ts";
import { readings, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { parseDistance } from "../units/distance.ts";
import { lengthText } from "../units/format.ts";
import { parseNumber } from "../units/parse.ts";
import { speedText, USUAL_SPEED } from "../units/running.ts";
import { PLAN_NAME } from "../words/own.ts";
import { askOf, FIRST, parseLoad, parseSpeed } from "./plan-draft.ts";
import { Findings, Steps } from "./plan-page.tsx";
import { text } from "./strings.ts";

const CATEGORIES = [
  "", "SF", "SG", "SH", "SJ", "SL", "SM", "SN", "SP", "GF-2", "GF-3", "GF-4", "GF-5", "GF-6",
  "GF-7", "CH-4", "CI-4", "CJ-4", "CK-4",
]; // biome-ignore format: a table

/** What a plan is made for; what it makes shows below while it is typed. */
export function PlanForm() {
  const form = useDraft("draft:plan", FIRST);
  const once = useOnce();
  const { draft, set } = form;
  const distance = distanceUnit();
  const asked = askOf(draft, { length: unitOf("movement_mm"), distance });
  const input = "input" in asked ? asked.input : null;
  const answer = useLatest("plan", input);
  const result = answer?.ok ? answer.result : null;
  const problemAt = (field: string): string | undefined => {
    const found: Problem[] = answer && !answer.ok ? answer.problems : [];
    const one = found.find((problem) => problem.field.endsWith(field));
    return one && `${one.text} ${one.next_step}`;
  };
  const km = (typed: string) => parseDistance(typed, distance);
  const slack = lastSlack();
  const byHours = draft.use_by === "hours";
  const make = async () => {
    if (!input || !result) return;
    // What is kept is the answer as the core gave it, not as it is shown.
    const answer = await run("plan", input);
    if (!answer.ok) return;
    const id = uuid7();
    await save("plans", {
      id,
      engine_id: currentEngine.value?.id ?? null,
      build_id: currentBuild.value?.id ?? null,
      label: draft.label?.trim() || PLAN_NAME,
      started_at: null,
      input,
      result: answer.result,
      core_version: coreVersion,
      log: [],
      created_at: new Date().toISOString(),
    });
    await form.clear();
    go(`plan/${id}`);
    await askPersistence();
    void sync();
  };
  return (
    <div class="page">
      <Back to="plan">{text.back}</Back>
      <section class="panel" aria-label={text.newPlan}>
        <h1>{text.newPlan}</h1>
        <PlainField
          field="plan_label"
          label={text.label}
          value={draft.label ?? ""}
          onValue={set("label")}
          hint={text.first}
          maxLength={120}
        />
        <Choice
          name="oil_kind"
          legend={text.oil}
          options={[...text.oils]}
          value={draft.oil_kind ?? "conventional"}
          onValue={set("oil_kind")}
        />
        <PlainField
          field="grade"
          label={text.grade}
          value={draft.grade ?? ""}
          onValue={set("grade")}
          hint={text.gradeHint}
          problem={problemAt("grade")}
          maxLength={12}
        />
        <Fold title={text.onTheCan}>
          <Select
            field="category"
            label={text.category}
            value={draft.category ?? ""}
            options={CATEGORIES.map((id) => ({ id, label: id || text.noCategory }))}
            onValue={set("category")}
          />
          {(["phosphorus_mg_per_kg", "zinc_mg_per_kg"] as const).map((field) => (
            <PlainField
              key={field}
              field={field}
              label={field.startsWith("p") ? text.phosphorus : text.zinc}
              value={draft[field] ?? ""}
              onValue={set(field)}
              parse={parseNumber}
              inputMode="decimal"
              unit="ppm"
              problem={problemAt(field)}
            />
          ))}
        </Fold>
        <Choice
          name="follower"
          legend={text.follower}
          options={[...text.followers]}
          value={draft.follower ?? "flat"}
          onValue={set("follower")}
        />
        <PlainField
          field="spring_open_load_n"
          label={text.springs}
          value={draft.spring_open_load_n ?? ""}
          onValue={set("spring_open_load_n")}
          parse={parseLoad}
          hint={text.springsHint}
          problem={problemAt("spring_open_load_n")}
        />
        <Choice
          name="rings"
          legend={text.rings}
          options={[...text.ringsOptions]}
          value={draft.rings ?? "new"}
          onValue={set("rings")}
        />
        <LengthField
          field="movement_mm"
          label={text.movement}
          value={draft.movement_mm ?? ""}
          onValue={set("movement_mm")}
          hint={text.movementHint}
          problem={problemAt("movement_mm")}
        />
        {slack && (
          <button type="button" class="button" onClick={() => form.put(slack)}>
            {text.fromSlack}
          </button>
        )}
        <LengthField
          field="expanded_uncertainty_mm"
          label={text.plusMinus}
          value={draft.expanded_uncertainty_mm ?? ""}
          onValue={set("expanded_uncertainty_mm")}
          problem={problemAt("expanded_uncertainty_mm")}
        />
        <Fold title={text.window} open={Boolean(draft.window_lower_mm || draft.window_upper_mm)}>
          {(["window_lower_mm", "window_upper_mm"] as const).map((field) => (
            <LengthField
              key={field}
              field={field}
              label={field === "window_lower_mm" ? text.windowFrom : text.windowTo}
              value={draft[field] ?? ""}
              onValue={set(field)}
              hint={text.windowHint}
              problem={problemAt(field)}
            />
          ))}
        </Fold>
        <Choice
          name="use_by"
          legend={text.useCounted}
          options={[...text.useBy]}
          value={byHours ? "hours" : "distance"}
          onValue={set("use_by")}
        />
        <PlainField
          field="use"
          label={text.use}
          value={draft.use ?? ""}
          onValue={set("use")}
          parse={byHours ? parseNumber : km}
          unit={byHours ? "h" : distance}
          hint={text.useHint}
          problem={problemAt("_per_week_km") ?? problemAt("_per_week_h")}
        />
        <PlainField
          field="average_speed_km_per_h"
          label={text.averageSpeed}
          value={draft.average_speed_km_per_h ?? ""}
          onValue={set("average_speed_km_per_h")}
          parse={(typed) => parseSpeed(typed, distance)}
          unit={distance === "mi" ? "mph" : "km/h"}
          hint={text.averageSpeedHint(speedText(USUAL_SPEED, distance))}
          problem={problemAt("average_speed_km_per_h")}
        />
        <PlainField
          field="drain_interval_km"
          label={text.drainInterval}
          value={draft.drain_interval_km ?? ""}
          onValue={set("drain_interval_km")}
          parse={km}
          unit={distance}
          hint={text.drainHint}
          problem={problemAt("drain_interval_km")}
        />
        {"missing" in asked && <p class="note wrong">{asked.missing}</p>}
        <button
          type="button"
          class="button button-main"
          disabled={!result}
          onClick={() => void once(make)}
        >
          {text.make}
        </button>
      </section>
      {result && <Findings now={result} />}
      {result && (
        <section class="panel">
          <h2>{text.steps}</h2>
          <Steps steps={result.steps} />
        </section>
      )}
    </div>
  );
}

/** The last slack reading of the engine at hand, as the form takes it. */
function lastSlack(): Record<string, string> | null {
  const engine = currentEngine.value?.id;
  const found = readings.value
    .filter((one) => one.calc === "slack" && one.engine_id === engine)
    .sort((a, b) => b.taken_at.localeCompare(a.taken_at))[0];
  if (!found || !("state" in found.result) || !found.result.state) return null;
  const { movement_mm } = found.result.state;
  const half = (movement_mm.high - movement_mm.low) / 2;
  return {
    movement_mm: lengthText(movement_mm.value, unitOf("movement_mm")),
    expanded_uncertainty_mm: lengthText(half, unitOf("movement_mm")),
  };
}
