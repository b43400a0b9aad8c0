/** Everything on the phone as one open file, for safe keeping anywhere. */
import { coreVersion } from "../core/terms.ts";
import { offer } from "../shell/offer.ts";
import { KINDS } from "../store/records.ts";
import { db } from "../store/state.ts";
import { csvOf } from "./csv.ts";
import { type All, fileOf } from "./format.ts";

async function everything(): Promise<All> {
  const from = await db();
  const found = await Promise.all(KINDS.map((kind) => from.getAll(kind)));
  return Object.fromEntries(KINDS.map((kind, i) => [kind, found[i]])) as unknown as All;
}

export async function exportAll(): Promise<void> {
  const now = new Date().toISOString();
  const whole = fileOf(await everything(), now, coreVersion, await (await db()).getAll("gone"));
  offer(JSON.stringify(whole, null, 1), "application/json", `midspan-${now.slice(0, 10)}.json`);
}

export async function exportReadings(): Promise<void> {
  const now = new Date().toISOString();
  const name = `midspan-readings-${now.slice(0, 10)}.csv`;
  offer(csvOf(await everything()), "text/csv;charset=utf-8", name);
}
