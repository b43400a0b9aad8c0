import { usePaper } from "../builds/page-foot.ts";
import { Back } from "../shell/back.tsx";
import type { Session } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { engines } from "../store/state.ts";
import "../styles/compare.css";
import "../styles/sheet.css";
import { fixed, lengthText } from "../units/format.ts";
import { whenText } from "../units/when.ts";
import { figureText, GainScale, LeftOut, SettingsTable, Strip } from "./parts.tsx";
import { text } from "./strings.ts";
import { useCompare } from "./use-compare.ts";

/** #/sessions/ID/page: what a customer can be shown of it, on one page of paper. */
export function CustomerPage({ session }: { session: Session }) {
  const on = useCompare(session);
  const result = on?.answer?.ok ? on.answer.result : null;
  const engine = engines.value.find((one) => one.id === session.engine_id);
  const name = engine?.name ?? "";
  const names = [name, session.label].filter(Boolean);
  usePaper([text.report, ...names].join(", "), names.join(" · "));
  const labels = Object.fromEntries(session.settings.map((one) => [one.key, one.label]));
  const settings = Object.fromEntries(
    session.settings.map((one) => [
      one.key,
      typeof one.movement_mm === "number"
        ? text.withMovement(one.label, lengthText(one.movement_mm, unitOf("session_movement")))
        : one.label,
    ]),
  );
  return (
    <div class="sheet-page">
      <div class="sheet-tools">
        <Back to={`sessions/${session.id}/compare`}>{text.backCompare}</Back>
        <button type="button" class="button button-main" onClick={() => print()}>
          {text.print}
        </button>
        <p class="small">{text.printNote}</p>
      </div>
      <article class="sheet compare-sheet">
        <header>
          <p class="sheet-kind">{text.report}</p>
          <h1>{name || session.label}</h1>
          {name && <p class="sheet-build">{session.label}</p>}
          <p>{whenText(session.at)}</p>
        </header>
        {session.invented && (
          <p class="sheet-invented">
            <strong>{text.inventedTitle}.</strong> {text.invented}
          </p>
        )}
        {!result && <p>{session.standard ? text.few : text.noStandard}</p>}
        {result && (
          <>
            <section>
              <h2>{text.verdict}</h2>
              {result.differences.map((one) => (
                <div key={one.to_setting} class="compare-said">
                  <p class="compare-headline">
                    {one.to_setting} {labels[one.to_setting] ?? ""}: {one.headline}
                  </p>
                  <GainScale one={one} />
                  <p>{one.why}</p>
                  {/* `why` says it too where no gain was shown. */}
                  {one.detectable_percent !== null && one.outcome.startsWith("shown") && (
                    <p>{text.detectable(fixed(one.detectable_percent, 2))}</p>
                  )}
                </div>
              ))}
            </section>
            <section>
              <h2>
                {text.figures}: {text.quantities[result.quantity]}
              </h2>
              <SettingsTable result={result} labels={settings} />
              <Strip result={result} />
            </section>
            <section>
              <h2>{text.how}</h2>
              <p>
                {text.standard}: {result.standard_label}. {result.design.text} {result.drift.text}{" "}
                {result.scatter.text}
              </p>
              <p>
                {result.runs
                  .map((run) =>
                    run.value === null
                      ? ""
                      : `${run.setting} ${figureText(run.value, result.unit)}${run.left_out ? " (–)" : ""}`,
                  )
                  .filter(Boolean)
                  .join(", ")}
              </p>
              <LeftOut result={result} />
            </section>
            <section>
              <p>{text.whatMeans}</p>
              <p>{text.dyno}</p>
            </section>
            <p class="sheet-made">
              {text.made(whenText(new Date().toISOString()), result.core_version)}
            </p>
          </>
        )}
      </article>
    </div>
  );
}
