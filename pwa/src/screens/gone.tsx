/** What was removed or set aside: listed under what is there, and brought back from here. */
import { signal } from "@preact/signals";
import { Fold } from "../controls/fold.tsx";
import type { Gone, Kind } from "../store/records.ts";
import { bringBack, gone, remove } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { whenText } from "../units/when.ts";
import { text } from "./gone-strings.ts";

interface Removed {
  kind: Kind;
  id: string;
  name: string;
}

/** What was removed last, for undoing it where the list is. */
const last = signal<Removed | null>(null);

export async function removeWithUndo(kind: Kind, id: string, name: string): Promise<void> {
  await remove(kind, id);
  last.value = { kind, id, name };
  void sync();
}

async function restore({ kind, id }: { kind: Kind; id: string }): Promise<void> {
  await bringBack(kind, id);
  last.value = null;
  void sync();
}

export function UndoNotice() {
  const one = last.value;
  if (!one) return null;
  return (
    <p class="notice" role="status">
      {text.wasRemoved(one.name)}{" "}
      <button type="button" class="button" onClick={() => void restore(one)}>
        {text.undo}
      </button>
    </p>
  );
}

interface ListProps {
  kinds: readonly Kind[];
  title: string;
  nameOf(one: Gone): string;
  /** Which of them, if not all. */
  where?(one: Gone): boolean;
  /** Where the record itself can still be seen, if it can. */
  linkOf?(one: Gone): string;
}

export function GoneList({ kinds, title, nameOf, where, linkOf }: ListProps) {
  const found = gone.value
    .filter((one) => kinds.includes(one.kind) && (where?.(one) ?? true))
    .sort((a, b) => b.deleted_at.localeCompare(a.deleted_at));
  if (found.length === 0) return null;
  return (
    <Fold title={`${title} (${found.length})`}>
      <ul class="rows">
        {found.map((one) => (
          <li key={one.key} class="gone-row">
            {linkOf ? (
              <a class="row" href={linkOf(one)}>
                <span>{nameOf(one)}</span>
              </a>
            ) : (
              <span>
                {nameOf(one)} <span class="small">{whenText(one.deleted_at)}</span>
              </span>
            )}
            <button
              type="button"
              class="button"
              aria-label={text.bringBackThe(nameOf(one))}
              onClick={() => void restore(one)}
            >
              {text.bringBack}
            </button>
          </li>
        ))}
      </ul>
    </Fold>
  );
}
