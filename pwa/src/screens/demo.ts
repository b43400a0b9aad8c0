/** The invented engine, for looking round without one; no number in it was measured. */
import english from "../../../api/midspan/demo/scenario.json";
import { shownOf } from "../benches/shown.ts";
import { run } from "../core/client.ts";
import type { Build, Chain, Drive, Entry, GearSet, Reading } from "../store/records.ts";
import { chooseBuild, chooseChain, chooseEngine, chooseGearSet } from "../store/settings.ts";
import { engines, save } from "../store/state.ts";
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

/** Loads the scenario, its results worked out by the core on this phone. */
export async function loadDemo(): Promise<void> {
  const scenario = await inLanguage();
  await save("engines", scenario.engine);
  for (const drive of scenario.drives) await save("drives", drive as Drive);
  for (const chain of scenario.chains) await save("chains", chain as Chain);
  for (const set of scenario.gear_sets) await save("gear-sets", set as GearSet);
  for (const build of scenario.builds) await save("builds", build as Build);
  for (const entry of scenario.entries) await save("entries", entry as Entry);
  for (const one of scenario.readings) {
    const calc = one.calc as Reading["calc"];
    const answer = await run(calc, one.input);
    if (!answer.ok) continue;
    await save("readings", {
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
  chooseEngine(scenario.engine.id);
  chooseBuild((scenario.builds[0] as Build | undefined) ?? null);
  const last = scenario.readings.findLast((one) => one.calc === "slack");
  chooseChain(last?.chain_id ?? null);
  chooseGearSet(last?.gear_set_id ?? null);
  void sync();
}
