/** The open file of everything: the same as the service writes and reads. */
import { type Gone, KINDS, type Kind, type Records } from "../store/records.ts";
import { content } from "./fields.ts";

export type All = { [K in Kind]: Records[K][] };

export const FORMAT = "midspan-export";
export const VERSION = 1;

/** A record that was deleted; with its content where that is still known. */
interface Tombstone {
  kind: Kind;
  id: string;
  deleted_at: string;
  record: Records[Kind] | null;
}

interface ExportFile {
  format: typeof FORMAT;
  version: number;
  exported_at: string;
  core_version: string;
  kinds: Kind[];
  records: All;
  tombstones: Tombstone[];
}

/** The file of these records; parents before children, each kind in the order of its ids. */
export function fileOf(all: All, now: string, version: string, gone: Gone[] = []): ExportFile {
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
    tombstones: gone.map(({ kind, id, deleted_at, record }) => ({
      kind,
      id,
      deleted_at,
      record: content(kind, record),
    })),
  };
}
