import { shownOf } from "../benches/shown.ts";
import { asRead } from "../core/as-read.ts";
import { OriginBadge } from "../result/origin.tsx";
import { withUnit } from "../result/quantity.ts";
import { ToneShape } from "../result/tone.tsx";
import { route } from "../shell/router.ts";
import type { Reading } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { chains, engines, placeOf, readings } from "../store/state.ts";
import { whenText } from "../units/when.ts";
import { GoneList } from "./gone.tsx";
import { text as goneText } from "./gone-strings.ts";
import { ReadingScreen } from "./reading.tsx";
import { text } from "./strings.ts";

/** What was saved, newest first; one of them opened. */
export function SavedScreen() {
  const id = route.value[1];
  if (route.value[0] === "saved" && id) return <ReadingScreen id={id} />;
  const list = [...readings.value].sort((a, b) => b.taken_at.localeCompare(a.taken_at));
  return (
    <div class="page">
      <h1>{text.savedTitle}</h1>
      {list.length === 0 ? (
        <p class="panel">{text.savedEmpty}</p>
      ) : (
        <ul class="saved-list">
          {list.map((reading) => (
            <li key={reading.id}>
              <Row reading={reading} />
            </li>
          ))}
        </ul>
      )}
      <GoneList
        kinds={["readings"]}
        title={goneText.setAsideTitle}
        nameOf={({ record }) => line(record as Reading)}
        linkOf={({ id }) => `#/saved/${id}`}
      />
      {list.length > 0 && (
        <a class="button button-wide" href="#/files">
          {text.files}
        </a>
      )}
    </div>
  );
}

function line({ calc, result, input, taken_at }: Reading): string {
  const at = shownOf(calc).glance(asRead(result, input), unitOf("readings_mm"));
  return `${at.what} ${withUnit(at.number, at.unit)}, ${whenText(taken_at)}`;
}

function Row({ reading }: { reading: Reading }) {
  const engine = engines.value.find((one) => one.id === reading.engine_id);
  const chain = chains.value.find((one) => one.id === reading.chain_id);
  const at = shownOf(reading.calc).glance(
    asRead(reading.result, reading.input),
    unitOf("readings_mm"),
  );
  const place = placeOf("readings", reading.id);
  return (
    <a class="saved-row" href={`#/saved/${reading.id}`}>
      <span class="saved-kind">{at.what}</span>
      <span class="saved-value">
        {withUnit(at.number, at.unit)} <small>{at.side}</small>
      </span>
      <span class="saved-verdict">
        <ToneShape tone={at.tone} />
        {at.headline}
      </span>
      <span class="saved-what">
        {whenText(reading.taken_at)}
        {engine && ` · ${engine.name}`}
        {chain && ` · ${chain.label}`}{" "}
        {engine?.invented && <span class="tag">{text.invented}</span>}
      </span>
      <span class="saved-foot">
        {at.limit && <OriginBadge origin={at.limit.origin} />}
        <span class={`place place-${place}`}>{text.placeShort[place]}</span>
      </span>
    </a>
  );
}
