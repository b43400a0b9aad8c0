/** Every relation by subject, with its proofs as soon as the core has worked them out. */
import later from "virtual:core-later";
import { relations } from "virtual:methods";
import { useEffect, useState } from "preact/hooks";
import { run } from "../core/client.ts";
import type { MethodsTable, Proof, Relation } from "../core/results.ts";

/** A relation with what guards it. */
export type Known = Relation & { proofs: Proof[]; checked: string; tests: string };

interface KnownSubject {
  id: string;
  label: string;
  relations: Known[];
}

export interface Methods {
  subjects: KnownSubject[];
  proofs: Proof[];
  /** The relations that each figure opens. */
  figures: MethodsTable["figures"];
}

interface Found {
  methods: Methods | null;
  trouble: string;
}

/** Puts the core's table and the text of its docstrings together. */
function together(table: MethodsTable, told: readonly Relation[]): Methods {
  const subjects = table.subjects.map(({ id, label, modules }) => ({
    id,
    label,
    relations: modules.flatMap(({ module, checked, tests }) =>
      told
        .filter(({ relation }) => relation.startsWith(`${module}.`))
        .map((one) => ({
          ...one,
          checked,
          tests,
          proofs: table.proofs.filter(({ relation }) => relation === one.relation),
        })),
    ),
  }));
  return { subjects, proofs: table.proofs, figures: table.figures };
}

export function useMethods(): Found {
  const [found, setFound] = useState<Found>({ methods: null, trouble: "" });
  useEffect(() => {
    let gone = false;
    run("methods", {}, later).then(
      (answer) => {
        if (gone) return;
        if (answer.ok) setFound({ methods: together(answer.result, relations), trouble: "" });
        else setFound({ methods: null, trouble: answer.problems[0]?.text ?? "" });
      },
      (error: unknown) => !gone && setFound({ methods: null, trouble: String(error) }),
    );
    return () => {
      gone = true;
    };
  }, []);
  return found;
}
