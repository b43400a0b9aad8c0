import { Fold } from "../controls/fold.tsx";
import { PowerSwitch, TorqueSwitch } from "../controls/unit-switch.tsx";
import type { BadRow } from "../core/dyno-table.ts";
import type { CorrectionResult } from "../core/results.ts";
import { GoneList, removeWithUndo, UndoNotice } from "../screens/gone.tsx";
import { Back } from "../shell/back.tsx";
import type { Run, Session } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { builds, runs } from "../store/state.ts";
import { lengthText } from "../units/format.ts";
import { whenText } from "../units/when.ts";
import { said } from "../words/told.ts";
import { runsOf } from "./air.ts";
import { Cautions } from "./cautions.tsx";
import { Figures } from "./figures.tsx";
import { text } from "./strings.ts";
import { useCorrections } from "./use-corrections.ts";

export function SessionPage({ session }: { session: Session }) {
  const list = runsOf(session.id, runs.value);
  const found = useCorrections(list);
  const unit = unitOf("session_movement");
  const build = builds.value.find((one) => one.id === session.build_id);
  const standard = session.standard;
  return (
    <div class="page builds-page sessions-page">
      <Back to="sessions">{text.back}</Back>
      <h1>
        {session.label} {session.invented && <span class="tag">{text.invented}</span>}
      </h1>
      <p class="small">
        {[whenText(session.at), build && text.toBuild(build.label)].filter(Boolean).join(" · ")}
      </p>
      <UndoNotice />
      <section class="panel">
        <h2>{text.settings}</h2>
        <ul class="plain-list">
          {session.settings.map((one) => (
            <li key={one.key}>
              <span class="chip">{one.key}</span> {one.label}
              {typeof one.movement_mm === "number" && ` · ${movementText(one, unit)}`}
            </li>
          ))}
        </ul>
        <p>{standard ? text.corrected(text.standards[standard] ?? standard) : text.noStandard}</p>
        {session.note && <p class="small">{session.note}</p>}
        <a class="button button-wide" href={`#/sessions/${session.id}/edit`}>
          {text.edit}
        </a>
      </section>
      <div class="two-ways">
        <a class="button button-main" href={`#/sessions/${session.id}/run`}>
          {text.addRun}
        </a>
        <a class="button button-main" href={`#/sessions/${session.id}/file`}>
          {text.addFile}
        </a>
      </div>
      {list.length > 1 && (
        <a class="button button-main button-wide" href={`#/sessions/${session.id}/compare`}>
          {text.compare}
        </a>
      )}
      <section class="panel">
        <h2>{text.runs}</h2>
        <div class="unit-row">
          <PowerSwitch label={text.power} />
          <TorqueSwitch label={text.torque} />
        </div>
        {list.length === 0 && <p>{text.noRuns}</p>}
        <ol class="runs">
          {list.map((one) => (
            <RunRow key={one.id} run={one} session={session} found={found.get(one.id) ?? null} />
          ))}
        </ol>
      </section>
      <GoneList
        kinds={["runs"]}
        title={text.asides}
        where={({ record }) => "session_id" in record && record.session_id === session.id}
        nameOf={({ record }) => ("place" in record ? text.runName(record.place) : "")}
      />
      <Cautions />
    </div>
  );
}

function movementText(
  { movement_mm, movement_u_mm }: Session["settings"][number],
  unit: "in" | "mm",
): string {
  const said = lengthText(movement_mm ?? 0, unit);
  return typeof movement_u_mm === "number" ? `${said} ± ${lengthText(movement_u_mm, unit)}` : said;
}

interface RunProps {
  run: Run;
  session: Session;
  found: CorrectionResult | null;
}

function RunRow({ run, session, found }: RunProps) {
  const { source } = run;
  const bad = (source?.bad_rows ?? []) as unknown as BadRow[];
  const name = text.runName(run.place);
  return (
    <li class="session-run">
      <p class="run-head">
        <strong>{name}</strong> <span class="chip">{run.setting}</span>{" "}
        <span class="small">{whenText(run.taken_at)}</span>
      </p>
      <Figures
        peaks={run.peaks}
        figuresAre={run.figures_are}
        standard={session.standard}
        found={found}
        hasAir={Boolean(run.conditions)}
      />
      {!run.conditions && session.standard === null && <p class="small">{text.noAir}</p>}
      {source && (
        <p class="small">
          {text.fromFile(source.file_name ?? "", source.rows_used ?? 0, source.rows ?? 0)}
          {run.curve && ` · ${text.curvePoints(run.curve.speed_rpm.length)}`}
        </p>
      )}
      {bad.length > 0 && (
        <Fold title={text.badRowsOfFile(bad.length)}>
          <BadRows rows={bad} />
        </Fold>
      )}
      {run.note && <p class="small">{run.note}</p>}
      <button
        type="button"
        class="button"
        aria-label={`${text.setAside}: ${name}`}
        onClick={() => void removeWithUndo("runs", run.id, name)}
      >
        {text.setAside}
      </button>
    </li>
  );
}

export function BadRows({ rows }: { rows: BadRow[] }) {
  return (
    <ul class="plain-list bad-rows">
      {rows.map((one) => (
        <li key={one.line}>
          <strong>{text.line(one.line)}</strong>: {said(one.why)}. <code>{one.text}</code>
        </li>
      ))}
    </ul>
  );
}
