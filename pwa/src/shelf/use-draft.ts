import { useEffect, useState } from "preact/hooks";
import { keep, kept } from "../store/state.ts";

/** Everything as typed, by field. */
export type Typed = Record<string, string>;

interface OnForm {
  draft: Typed;
  set(field: string): (value: string) => void;
  put(part: Typed): void;
  /** Forgets what was typed, once it is saved. */
  clear(): Promise<void>;
}

/** A half-entered form that outlives the page, under a name of its own. */
export function useDraft(name: string, first: Typed): OnForm {
  const [draft, setDraft] = useState(first);
  useEffect(() => {
    void kept<Typed>(name).then((found) => {
      if (found) setDraft(found);
    });
  }, [name]);
  const put = (part: Typed) => {
    const next = { ...draft, ...part };
    setDraft(next);
    void keep(name, next);
  };
  return {
    draft,
    put,
    set: (field) => (value) => put({ [field]: value }),
    clear: () => keep(name, undefined),
  };
}
