import { ranOf } from "../benches/running.ts";
import { shownOf } from "../benches/shown.ts";
import { FactList } from "../controls/fact-list.tsx";
import { asRead } from "../core/as-read.ts";
import { useLatest } from "../core/latest.ts";
import { labelOf } from "../core/terms.ts";
import { Hero } from "../result/hero.tsx";
import { withUnit } from "../result/quantity.ts";
import { Back } from "../shell/back.tsx";
import { InTurn } from "../shell/in-turn.tsx";
import { driveOf, type Reading } from "../store/records.ts";
import { settings, unitOf } from "../store/settings.ts";
import {
  bringBack,
  builds,
  chains,
  engines,
  gearSets,
  gone,
  outbox,
  placeOf,
  readings,
  remove,
} from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { trimmed } from "../units/format.ts";
import { ranText } from "../units/running.ts";
import { whenText } from "../units/when.ts";
import { text as goneText } from "./gone-strings.ts";
import { inputRows } from "./input-rows.ts";
import { RefusedRecord } from "./refused.tsx";
import { text } from "./strings.ts";

/** One saved reading: what was said then, from what, and whether today's core says the same. */
export function ReadingScreen({ id }: { id: string }) {
  const here = readings.value.find((one) => one.id === id);
  const entry = outbox.value.find((one) => one.key === `readings/${id}`);
  const aside = gone.value.find((one) => one.key === `readings/${id}`);
  const reading = here ?? (aside?.record as Reading | undefined);
  if (!reading) return <p class="panel">{text.notFound}</p>;
  const length = unitOf("readings_mm");
  const { input } = reading;
  const result = asRead(reading.result, input);
  const { glance, Reasons, Pictures, Details } = shownOf(reading.calc);
  return (
    <div class="bench reading">
      <h1 class="visually-hidden">{text.savedTitle}</h1>
      <div class="area-hero">
        <Back to="saved">{text.backToList}</Back>
        <Hero glance={glance(result, length)} missing="" length={length} quantity="" />
      </div>
      <section class="area-form" aria-label={text.inputs}>
        {entry && <RefusedRecord entry={entry} />}
        <Aside reading={reading} aside={!here} />
        <InTurn>
          <Facts reading={reading} />
          <Again reading={reading} />
        </InTurn>
      </section>
      <InTurn>
        <div class="area-reasons">
          <Reasons result={result} input={input} length={length} />
        </div>
      </InTurn>
      <InTurn>
        <div class="area-pictures">
          <Pictures drive={driveOf(input)} result={result} input={input} length={length} />
        </div>
      </InTurn>
      <InTurn>
        <div class="area-detail">
          <Details result={result} input={input} length={length} />
        </div>
      </InTurn>
    </div>
  );
}

/** A reading that is wrong is set aside, with its reasons in the note; it is never erased. */
function Aside({ reading: { id }, aside }: { reading: Reading; aside: boolean }) {
  const change = async () => {
    await (aside ? bringBack("readings", id) : remove("readings", id));
    void sync();
  };
  return (
    <section class="panel">
      <p class={aside ? "notice" : "small"}>{aside ? goneText.isAside : goneText.setAsideNote}</p>
      <button type="button" class="button" onClick={() => void change()}>
        {aside ? goneText.bringBack : goneText.setAside}
      </button>
    </section>
  );
}

function Facts({ reading }: { reading: Reading }) {
  const engine = engines.value.find((one) => one.id === reading.engine_id);
  const chain = chains.value.find((one) => one.id === reading.chain_id);
  const rows: [string, string][] = [
    [text.takenAt, whenText(reading.taken_at)],
    [text.engine, engine ? engine.name : text.none],
    [text.chain, chain?.label ?? text.none],
    [text.where, text.places[placeOf("readings", reading.id)]],
    [text.version, reading.core_version],
  ];
  const gears = gearSets.value.find((one) => one.id === reading.gear_set_id);
  if (gears) rows.splice(3, 0, [text.gearSet, gears.label]);
  const build = builds.value.find((one) => one.id === reading.build_id);
  if (build) rows.splice(2, 0, [text.build, build.label]);
  if (typeof reading.load_n === "number") {
    rows.push([text.load, withUnit(trimmed(reading.load_n, 1), "N")]);
  }
  const ran = ranOf(reading, builds.value);
  if (ran) rows.push([text.ran, ranText(ran, settings.value.running)]);
  if (typeof reading.odometer_km === "number") {
    const shown = { km: reading.odometer_km };
    rows.push([labelOf("odometer_km"), ranText(shown, settings.value.running)]);
  }
  if (reading.note) rows.push([text.note, reading.note]);
  const units = { temperature: settings.value.temperature, length: unitOf("readings_mm") };
  return (
    <section class="panel">
      {engine?.invented && <p class="notice">{text.inventedNote}</p>}
      <FactList rows={rows} />
      <h2>{text.inputs}</h2>
      <FactList rows={inputRows(reading.input, units)} />
    </section>
  );
}

/** Runs the same inputs through today's core, so that an old verdict can be explained. */
function Again({ reading }: { reading: Reading }) {
  const answer = useLatest(reading.calc, reading.input);
  if (!answer) return null;
  let words: string;
  if (!answer.ok) words = text.noAgain + answer.problems.map((one) => one.text).join(" ");
  else {
    const { core_version } = answer.result;
    const { glance } = shownOf(reading.calc);
    const now = glance(answer.result, "mm");
    const same = now.outcome === glance(reading.result, "mm").outcome;
    words = same ? text.sameAgain(core_version) : text.otherAgain(core_version, now.headline);
  }
  return (
    <section class="panel">
      <h2>{text.again}</h2>
      <p>{words}</p>
    </section>
  );
}
