import { useState } from "preact/hooks";
import { FactList } from "../controls/fact-list.tsx";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { GoneList, UndoNotice } from "../screens/gone.tsx";
import { RefusedRecord } from "../screens/refused.tsx";
import { tagged } from "../shelf/tag.ts";
import { Back } from "../shell/back.tsx";
import { Icon } from "../shell/icon.tsx";
import { go } from "../shell/router.ts";
import type { Build } from "../store/records.ts";
import { chooseBuild, chooseEngine, currentBuild, distanceUnit } from "../store/settings.ts";
import { chains, drives, engines, gearSets, outbox } from "../store/state.ts";
import { distanceText } from "../units/distance.ts";
import { whenText } from "../units/when.ts";
import { KINDS } from "./entry-draft.ts";
import { driveText, ItemRow, wordsOf } from "./item.tsx";
import { itemsOf, readingsBefore } from "./record.ts";
import { text } from "./strings.ts";
import { idOf, search } from "./timeline.ts";

/** Fewer than this can be seen without looking for one. */
const MANY = 8;

/** A build: what it is, what can be added to it, and all of it in time order. */
export function BuildPage({ build }: { build: Build }) {
  const [typed, setTyped] = useState("");
  const items = itemsOf(build);
  const shown = search(items, typed, wordsOf);
  return (
    <div class="page builds-page">
      <Back to="builds">{text.back}</Back>
      <UndoNotice />
      <Head build={build} />
      <nav class="panel quick" aria-label={text.add}>
        <h2>{text.add}</h2>
        <ul>
          {KINDS.map((kind) => (
            <li key={kind}>
              <a class="button" href={`#/builds/${build.id}/${kind}`}>
                <Icon name={kind} />
                {text.kinds[kind]}
              </a>
            </li>
          ))}
          <li>
            <button type="button" class="button" onClick={() => measure(build)}>
              <Icon name="measure" />
              {text.measure}
            </button>
          </li>
        </ul>
      </nav>
      <section class="panel">
        <h2>{text.timeline}</h2>
        {items.length === 0 && <p class="small">{text.timelineEmpty}</p>}
        {items.length > MANY && (
          <PlainField
            field="build_search"
            label={text.find}
            value={typed}
            onValue={setTyped}
            hint={typed ? text.findHint(shown.length, items.length) : undefined}
            maxLength={60}
          />
        )}
        <ol class="timeline">
          {shown.map((item) => (
            <li key={idOf(item)}>
              <ItemRow item={item} />
            </li>
          ))}
        </ol>
      </section>
      <Before build={build} />
      <GoneList
        kinds={["entries"]}
        title={text.removed}
        nameOf={({ record }) => ("title" in record ? record.title : "")}
        where={({ record }) => "build_id" in record && record.build_id === build.id}
      />
    </div>
  );
}

/** What was read on the engine before the build, which is all of it for who measures first. */
function Before({ build }: { build: Build }) {
  const found = readingsBefore(build);
  if (found.length === 0) return null;
  return (
    <Fold title={`${text.before} (${found.length})`} open={found.length <= MANY}>
      <p class="small">{text.beforeNote}</p>
      <ol class="timeline">
        {found.map((reading) => (
          <li key={reading.id}>
            <ItemRow item={{ kind: "reading", at: reading.taken_at, reading }} />
          </li>
        ))}
      </ol>
    </Fold>
  );
}

function takeInHand(build: Build): void {
  chooseEngine(build.engine_id);
  chooseBuild(build);
}

function measure(build: Build): void {
  takeInHand(build);
  go("slack");
}

function Head({ build }: { build: Build }) {
  const engine = engines.value.find((one) => one.id === build.engine_id);
  const drive = drives.value.find((one) => one.id === build.drive_id);
  const chain = chains.value.find((one) => one.id === build.chain_id);
  const gears = gearSets.value.find((one) => one.id === build.gear_set_id);
  const inHand = currentBuild.value?.id === build.id;
  const waiting = outbox.value.find((one) => one.key === `builds/${build.id}`);
  const rows: [string, string][] = [
    [text.engine, engine?.name ?? text.nothing],
    [text.startedAt, whenText(build.started_at)],
  ];
  if (typeof build.odometer_km === "number") {
    rows.push([text.odometer, distanceText(build.odometer_km, distanceUnit())]);
  }
  if (drive) rows.push([text.drive, driveText(drive)]);
  if (chain) rows.push([text.aboutChain, tagged(chain)]);
  if (gears) rows.push([text.aboutGears, tagged(gears)]);
  if (build.note) rows.push([text.note, build.note]);
  return (
    <>
      {waiting && <RefusedRecord entry={waiting} />}
      <section class="panel">
        <h1>
          {build.label} {engine?.invented && <span class="tag">{text.invented}</span>}
        </h1>
        <FactList rows={rows} />
        {inHand && <p class="small">{text.inHandNote}</p>}
        <div class="buttons">
          <button
            type="button"
            class="button"
            aria-pressed={inHand}
            onClick={() => (inHand ? chooseBuild(null) : takeInHand(build))}
          >
            {inHand ? text.putAside : text.takeInHand}
          </button>
          <a class="button" href={`#/builds/${build.id}/edit`}>
            {text.edit}
          </a>
          <a class="button" href={`#/builds/${build.id}/sheet`}>
            {text.sheet}
          </a>
        </div>
      </section>
    </>
  );
}
