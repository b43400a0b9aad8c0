/** The invented engine, for looking round without one; no number in it was measured. */
import scenario from "../../../api/midspan/demo/scenario.json";
import { run } from "../core/client.ts";
import type { Chain, Drive, Reading } from "../store/records.ts";
import { chooseChain, chooseEngine } from "../store/settings.ts";
import { engines, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";

/** Whether the invented engine is on this phone already. */
export function hasDemo(): boolean {
  return engines.value.some((engine) => engine.id === scenario.engine.id);
}

/** Loads the scenario, its results worked out by the core on this phone. */
export async function loadDemo(): Promise<void> {
  await save("engines", scenario.engine);
  for (const drive of scenario.drives) await save("drives", drive as Drive);
  for (const chain of scenario.chains) await save("chains", chain as Chain);
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
      limit: answer.result.verdict.limit,
    });
  }
  chooseEngine(scenario.engine.id);
  chooseChain(scenario.chains.at(-1)?.id ?? null);
  void sync();
}
