import { useEffect, useRef, useState } from "preact/hooks";
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
  // What was typed last, at once: two changes may come before the next drawing.
  const newest = useRef(draft);
  const show = (next: Typed) => {
    newest.current = next;
    setDraft(next);
  };
  useEffect(() => {
    void kept<Typed>(name).then((found) => found && show(found));
  }, [name]);
  const put = (part: Typed) => {
    show({ ...newest.current, ...part });
    void keep(name, newest.current);
  };
  return {
    draft,
    put,
    set: (field) => (value) => put({ [field]: value }),
    clear: () => keep(name, undefined),
  };
}
