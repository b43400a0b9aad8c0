/** Everything on the phone as one open file, for safe keeping anywhere. */
import { coreVersion } from "../core/terms.ts";
import { KINDS, type Kind, type Records } from "../store/records.ts";
import { db } from "../store/state.ts";
import { csvOf } from "./csv.ts";
import { content } from "./fields.ts";

export const FORMAT = "midspan-export";
export const VERSION = 1;

/** A record that was deleted; with its content where that is still known. */
export interface Tombstone {
  kind: Kind;
  id: string;
  deleted_at: string;
  record: Records[Kind] | null;
}

/** The same file as the service writes and reads. */
export interface ExportFile {
  format: typeof FORMAT;
  version: number;
  exported_at: string;
  core_version: string;
  kinds: Kind[];
  records: { [K in Kind]: Records[K][] };
  tombstones: Tombstone[];
}

type All = { [K in Kind]: Records[K][] };

async function everything(): Promise<All> {
  const from = await db();
  const found = await Promise.all(KINDS.map((kind) => from.getAll(kind)));
  return Object.fromEntries(KINDS.map((kind, i) => [kind, found[i]])) as unknown as All;
}

/** The file of these records; parents before children, each kind in the order of its ids. */
export function fileOf(all: All, now: string, version: string): ExportFile {
  const records = KINDS.map((kind) => {
    const list = (all[kind] as { id: string }[]).map((one) => content(kind, one));
    return [kind, list.sort((a, b) => (a.id < b.id ? -1 : 1))];
  });
  return {
    format: FORMAT,
    version: VERSION,
    exported_at: now,
    core_version: version,
    kinds: [...KINDS],
    records: Object.fromEntries(records),
    tombstones: [],
  };
}

export async function exportAll(): Promise<void> {
  const now = new Date().toISOString();
  const whole = fileOf(await everything(), now, coreVersion);
  offer(JSON.stringify(whole, null, 1), "application/json", `midspan-${now.slice(0, 10)}.json`);
}

export async function exportReadings(): Promise<void> {
  const now = new Date().toISOString();
  const name = `midspan-readings-${now.slice(0, 10)}.csv`;
  offer(csvOf(await everything()), "text/csv;charset=utf-8", name);
}

/** Hands a file to the browser's downloads. */
function offer(text: string, type: string, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
