import { useEffect, useRef, useState } from "preact/hooks";
import { keep, kept } from "../store/state.ts";
import type { Draft } from "./bench.ts";
import { changed } from "./draft.ts";

interface KeptDraft {
  /** As it was typed last; null until what is kept of it has been read. */
  draft: Draft | null;
  /** Changes what is named; two changes may come before the next drawing, and neither is lost. */
  change(part: Partial<Draft>): void;
  /** Has the draft be what this makes of it. */
  replace(by: (now: Draft) => Draft): void;
}

/** A draft that is kept on the phone as it is typed. */
export function useKeptDraft(name: string, empty: Draft): KeptDraft {
  const [held, setHeld] = useState<{ name: string; draft: Draft } | null>(null);
  const newest = useRef(empty);
  useEffect(() => {
    void kept<Draft>(name).then((found) => {
      newest.current = { ...empty, ...found };
      setHeld({ name, draft: newest.current });
    });
  }, [name, empty]);
  const replace = (by: (now: Draft) => Draft) => {
    newest.current = by(newest.current);
    setHeld({ name, draft: newest.current });
    void keep(name, newest.current);
  };
  return {
    draft: held?.name === name ? held.draft : null,
    change: (part) => replace((now) => changed(now, part)),
    replace,
  };
}
