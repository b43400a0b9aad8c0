/** The invented engine, for looking round without one; no number in it was measured. */
import english from "../../../api/midspan/demo/scenario.json";
import { shownOf } from "../benches/shown.ts";
import { run } from "../core/client.ts";
import { coreVersion } from "../core/terms.ts";
import type { Named } from "../store/db.ts";
import type { Build, Kind, Reading, Records } from "../store/records.ts";
import { chooseBuild, chooseChain, chooseEngine, chooseGearSet } from "../store/settings.ts";
import { engines, saveAll } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { language } from "../words/language.ts";
import { inOtherWords } from "./demo-words.ts";

/** Whether the invented engine is on this phone already. */
export function hasDemo(): boolean {
  const ids = [english, inOtherWords(english, {})].map((one) => one.engine.id);
  return engines.value.some((engine) => ids.includes(engine.id));
}

/** The scenario in the language of the phone: what is typed stays as typed, but this is the app's own. */
async function inLanguage(): Promise<typeof english> {
  return language === "es" ? inOtherWords(english, (await import("../es/demo.ts")).demo) : english;
}

/** Loads the scenario, its results worked out by the core on this phone: all of it, or nothing. */
export async function loadDemo(): Promise<void> {
  const scenario = await inLanguage();
  const of = <K extends Kind>(kind: K, records: readonly unknown[]): Named[] =>
    records.map((record) => ({ kind, record: record as Records[K] }));
  await saveAll([
    ...of("engines", [scenario.engine]),
    ...of("drives", scenario.drives),
    ...of("chains", scenario.chains),
    ...of("gear-sets", scenario.gear_sets),
    ...of("builds", scenario.builds),
    ...of("entries", scenario.entries),
    ...of("readings", await workedOut(scenario)),
    ...of("sessions", scenario.sessions),
    ...of(
      "runs",
      scenario.runs.map((one) => ({ ...one, core_version: coreVersion })),
    ),
  ]);
  chooseEngine(scenario.engine.id);
  chooseBuild((scenario.builds[0] as Build | undefined) ?? null);
  const last = scenario.readings.findLast((one) => one.calc === "slack");
  chooseChain(last?.chain_id ?? null);
  chooseGearSet(last?.gear_set_id ?? null);
  void sync();
}

async function workedOut(scenario: typeof english): Promise<Reading[]> {
  const found: Reading[] = [];
  for (const one of scenario.readings) {
    const calc = one.calc as Reading["calc"];
    const answer = await run(calc, one.input);
    if (!answer.ok) continue;
    found.push({
      ...one,
      calc,
      // An id of its own: the service may hold the same scenario, worked out over there.
      id: uuid7(Date.parse(one.taken_at)),
      input: one.input as Reading["input"],
      result: answer.result,
      core_version: answer.result.core_version,
      limit: shownOf(calc).glance(answer.result, "mm").limit,
    });
  }
  return found;
}
