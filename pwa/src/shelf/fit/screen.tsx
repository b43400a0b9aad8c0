import { Fold } from "../../controls/fold.tsx";
import { coreBusy } from "../../core/client.ts";
import type { FitResult } from "../../core/results.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { OriginBadge, Source } from "../../result/origin.tsx";
import { currentEngine, unitOf } from "../../store/settings.ts";
import { lengthText, trimmed } from "../../units/format.ts";
import { Findings } from "./findings.tsx";
import { Matrix } from "./matrix.tsx";
import { NextTrial } from "./next-trial.tsx";
import { Ranked } from "./ranked.tsx";
import { Settings } from "./settings.tsx";
import { text } from "./strings.ts";
import { tableOf } from "./table.ts";
import { type OnFit, useFit } from "./use-fit.ts";
import { PartsAside, UsedReadings } from "./used.tsx";

/** Which chain on which gears, in this engine: what to try next first, then the ranking. */
export function FitScreen() {
  const on = useFit();
  if (!on) return null;
  const { drive } = on.stand;
  if (!drive) {
    return (
      <Teach
        title={text.needsDriveTitle}
        words={text.needsDrive}
        to="#/drive"
        go={text.enterDrive}
      />
    );
  }
  const { assembled } = on;
  if (!assembled?.chains.length || !assembled.gears.length) {
    return (
      <Teach title={text.needsPartsTitle} words={text.needsParts} to="#/shelf" go={text.openShelf}>
        {assembled && <PartsAside assembled={assembled} />}
      </Teach>
    );
  }
  const centre = lengthText(drive.centre_distance_mm, unitOf("centre_distance_mm"));
  const table = on.result && tableOf(assembled, on.result);
  // A ranking that rests on readings which disagree must not be read before that is.
  const doubt = on.result?.consistency.consistent === false;
  const findings = on.result && table && (
    <Findings result={on.result} table={table} assembled={assembled} />
  );
  return (
    <div class="page fit-page">
      <header class="fit-head">
        <h1>{text.title}</h1>
        <p class="small">
          {text.on(`${drive.crank_teeth}/${drive.cam_teeth}`, drive.links, centre)}
          {currentEngine.value?.invented && " · "}
          {currentEngine.value?.invented && <span class="tag">{text.invented}</span>}
        </p>
        <p class="fit-busy small" role="status">
          {coreBusy.value ? text.working : ""}
        </p>
      </header>
      {(on.missing || on.problems.length > 0) && <Refusals on={on} />}
      {on.result && table && (
        <>
          <NextTrial result={on.result} table={table} assembled={assembled} />
          {doubt && findings}
          <Ranked result={on.result} table={table} source={on.draft.fields.window_source ?? ""} />
          {!doubt && findings}
          <Matrix table={table} assembled={assembled} window={on.result.window} />
        </>
      )}
      <Settings on={on} />
      <UsedReadings on={on} assembled={assembled} />
      <PartsAside assembled={assembled} />
      {on.result && <Known result={on.result} />}
    </div>
  );
}

interface TeachProps {
  title: string;
  words: string;
  to: string;
  go: string;
  children?: preact.ComponentChildren;
}

function Teach({ title, words, to, go, children }: TeachProps) {
  return (
    <div class="page fit-page">
      <h1>{text.title}</h1>
      <section class="panel empty">
        <h2>{title}</h2>
        <p>{words}</p>
        <a class="button button-main" href={to}>
          {go}
        </a>
      </section>
      {children}
    </div>
  );
}

/** The figures it rests on with their origins, and what can hurt. */
function Known({ result }: { result: FitResult }) {
  return (
    <>
      <Notes result={result} />
      {result.materials.length > 0 && (
        <Fold title={text.materials}>
          <ul class="plain-list">
            {result.materials.map((one) => (
              <li key={one.part}>
                {text.part[one.part]}: {one.label}, {trimmed(one.expansion_ppm, 2)} {text.perKelvin}{" "}
                <OriginBadge origin={one.origin} />{" "}
                <Source source={one.source} address={one.address} />
              </li>
            ))}
          </ul>
        </Fold>
      )}
      <Assumed result={result} />
    </>
  );
}

function Refusals({ on }: { on: OnFit }) {
  return (
    <section class="panel refusals" role="alert">
      <h2>{text.refused}</h2>
      {on.missing && <p>{on.missing}</p>}
      <ul>
        {on.problems.map((one) => (
          <li key={`${one.field} ${one.code}`}>
            {one.text} {one.next_step}
          </li>
        ))}
      </ul>
    </section>
  );
}
