import { AreaField } from "../controls/area-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { PowerSwitch, TorqueSwitch } from "../controls/unit-switch.tsx";
import { useLatest } from "../core/latest.ts";
import { coreVersion } from "../core/terms.ts";
import { useDraft } from "../shelf/use-draft.ts";
import { useOnce } from "../shell/once.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Run, Session } from "../store/records.ts";
import { settings } from "../store/settings.ts";
import { runs, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { parseNumber } from "../units/parse.ts";
import { POWER_SIGNS, parsePower, parseTorque, TORQUE_SIGNS } from "../units/power.ts";
import { airDraft, airOf, runsOf } from "./air.ts";
import { AirFields, FiguresAre } from "./air-fields.tsx";
import { Figures } from "./figures.tsx";
import { SettingPick } from "./setting-pick.tsx";
import { text } from "./strings.ts";

/** A run by its peaks, as the dyno shows them. */
export function RunForm({ session }: { session: Session }) {
  const before = runsOf(session.id, runs.value);
  const last = before.at(-1) ?? null;
  const { power, torque, temperature, length } = settings.value;
  const first = {
    ...airDraft([...before].reverse().find((one) => one.conditions) ?? null, temperature),
    figures_are: last?.figures_are ?? "observed",
    setting: "",
  };
  const form = useDraft(`draft:run:${session.id}`, first);
  const { draft, set } = form;
  const once = useOnce();
  const number = (name: string, parse: (typed: string) => ReturnType<typeof parseNumber>) => {
    if (!draft[name]?.trim()) return null;
    const read = parse(draft[name]);
    return read.ok ? read.value : "wrong";
  };
  const typed = {
    power_kw: number("power", (one) => parsePower(one, power)),
    power_speed_rpm: number("power_speed", parseNumber),
    torque_nm: number("torque", (one) => parseTorque(one, torque)),
    torque_speed_rpm: number("torque_speed", parseNumber),
  };
  const wrong = Object.values(typed).includes("wrong");
  const peaks = Object.fromEntries(
    Object.entries(typed).filter(([, value]) => typeof value === "number"),
  ) as Run["peaks"];
  const air = airOf(draft, temperature, length);
  const figures_are = (draft.figures_are ?? "observed") as Run["figures_are"];
  const answer = useLatest(
    "correction",
    air && air !== "wrong"
      ? {
          conditions: air,
          figures_are,
          conditions_are: draft.copied ? "another-run" : "this-run",
          ...(typeof peaks.power_kw === "number" ? { power_kw: peaks.power_kw } : {}),
          ...(typeof peaks.torque_nm === "number" ? { torque_nm: peaks.torque_nm } : {}),
        }
      : null,
  );
  const refusal = answer && !answer.ok ? answer.problems : [];
  const any = "power_kw" in peaks || "torque_nm" in peaks;
  const missing = !draft.setting
    ? text.pickSetting
    : !any || wrong
      ? text.needFigure
      : air === "wrong"
        ? text.needAir
        : "";
  const ready = missing === "" && refusal.length === 0 && (air === null || answer?.ok);
  const store = async () => {
    const now = new Date().toISOString();
    await save("runs", {
      id: uuid7(),
      session_id: session.id,
      setting: draft.setting ?? "",
      place: (last?.place ?? 0) + 1,
      taken_at: now,
      conditions: answer?.ok ? answer.result.conditions : null,
      figures_are,
      peaks,
      curve: null,
      source: null,
      core_version: coreVersion,
      note: draft.note?.trim() || null,
      created_at: now,
    });
    await form.clear();
    go(`sessions/${session.id}`);
    await askPersistence();
    void sync();
  };
  const speed = (field: string, label: string) => (
    <PlainField
      field={field}
      label={label}
      value={draft[field] ?? ""}
      onValue={set(field)}
      parse={parseNumber}
      inputMode="decimal"
      unit="rpm"
    />
  );
  return (
    <section class="panel" aria-label={text.typeTitle}>
      <h1>{text.typeTitle}</h1>
      <SettingPick session={session} value={draft.setting ?? ""} onValue={set("setting")} />
      <FiguresAre value={figures_are} onValue={set("figures_are")} />
      <div class="unit-row">
        <PowerSwitch label={text.power} />
        <TorqueSwitch label={text.torque} />
      </div>
      <PlainField
        field="power"
        label={text.power}
        value={draft.power ?? ""}
        onValue={set("power")}
        parse={(one) => parsePower(one, power)}
        inputMode="decimal"
        unit={POWER_SIGNS[power]}
      />
      {speed("power_speed", `${text.power} ${text.powerSpeed}`)}
      <PlainField
        field="torque"
        label={text.torque}
        value={draft.torque ?? ""}
        onValue={set("torque")}
        parse={(one) => parseTorque(one, torque)}
        inputMode="decimal"
        unit={TORQUE_SIGNS[torque]}
      />
      {speed("torque_speed", `${text.torque} ${text.torqueSpeed}`)}
      <AirFields form={form} />
      {air === null && <p class="small how">{text.noAirHint}</p>}
      <AreaField
        field="run_note"
        label={text.note}
        value={draft.note ?? ""}
        onValue={set("note")}
      />
      {refusal.map((one) => (
        <p key={one.field + one.code} class="note wrong">
          {one.text} {one.next_step}
        </p>
      ))}
      {any && (
        <section class="both" aria-live="polite" aria-label={text.bothTitle}>
          <h2>{text.bothTitle}</h2>
          <Figures
            peaks={peaks}
            figuresAre={figures_are}
            standard={session.standard}
            found={answer?.ok ? answer.result : null}
            hasAir={air !== null}
          />
        </section>
      )}
      {missing && any && <p class="note wrong">{missing}</p>}
      <button
        type="button"
        class="button button-main"
        disabled={!ready}
        onClick={() => void once(store)}
      >
        {text.saveRun}
      </button>
    </section>
  );
}
