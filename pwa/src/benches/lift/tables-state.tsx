import type { Draft } from "../bench.ts";
import { tableOf } from "./lobe.ts";
import { LOBES, text } from "./meta.ts";

interface Props {
  tables: Draft | null;
  needed: string;
  has(lobes: string): string;
  open: string;
}

/** Which lift tables there are, and the way to them. */
export function TablesState({ tables, needed, has, open }: Props) {
  const there = LOBES.filter((lobe) => tables && tableOf(tables, lobe).trim() !== "");
  return (
    <div class="lobe-state">
      <p>
        {there.length > 0
          ? has(there.map((lobe) => text.lobes[lobe].toLowerCase()).join(", "))
          : needed}
      </p>
      <a class="button button-wide" href="#/lift">
        {open}
      </a>
    </div>
  );
}
