import { useState } from "preact/hooks";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { find } from "../home/find.ts";
import { route } from "../shell/router.ts";
import { said } from "../words/told.ts";
import { OfFigure } from "./of-figure.tsx";
import { counts, RelationFold } from "./relation.tsx";
import { text } from "./strings.ts";
import { type Known, type Methods, useMethods } from "./use-methods.ts";
import "../styles/methods.css";

// So few hits are worth opening at once.
const OPENED = 2;

/** How everything is worked out, and every published value beside ours. */
export function MethodsScreen() {
  const { methods, trouble } = useMethods();
  const [typed, setTyped] = useState("");
  const figure = route.value[1] === "of" ? route.value[2] : undefined;
  return (
    <div class="page methods">
      <h1>{text.title}</h1>
      {!figure && <p>{text.lead}</p>}
      {text.quoted && <p>{text.quoted}</p>}
      {trouble && (
        <p class="trouble" role="alert">
          {text.trouble} {trouble}
        </p>
      )}
      {!methods && !trouble && <p role="status">{text.working}</p>}
      {methods && figure && <OfFigure figure={figure} methods={methods} />}
      {methods && !figure && (
        <>
          <Summary methods={methods} />
          <PlainField
            field="find-method"
            label={text.find}
            value={typed}
            hint={text.findHint}
            onValue={setTyped}
          />
          {typed.trim() === "" ? (
            <Subjects methods={methods} />
          ) : (
            <Hits typed={typed} methods={methods} />
          )}
        </>
      )}
    </div>
  );
}

function Summary({ methods }: { methods: Methods }) {
  const { held, whole } = counts(methods.proofs);
  const published = counts(methods.proofs.filter((one) => one.origin === "published")).whole;
  return (
    <section class="panel" data-testid="held" data-all={held === whole}>
      <h2>{text.held(held, whole)}</h2>
      <p>{text.origins(published, whole - published)}</p>
      <p class="small">{text.limits}</p>
    </section>
  );
}

function Subjects({ methods }: { methods: Methods }) {
  return (
    <>
      {methods.subjects.map(({ id, label, relations }) => {
        const { whole } = counts(relations.flatMap((one) => one.proofs));
        return (
          <Fold
            key={id}
            title={text.subject(said(label), relations.length, whole)}
            open={route.value[1] === id}
          >
            {relations.map((one) => (
              <RelationFold key={one.relation} known={one} open={false} />
            ))}
          </Fold>
        );
      })}
    </>
  );
}

function Hits({ typed, methods }: { typed: string; methods: Methods }) {
  const all = methods.subjects.flatMap(({ label, relations }) =>
    relations.map((one) => ({
      kind: label,
      name: one.gives,
      words: wordsOf(one),
      href: one.relation,
      one,
    })),
  );
  const hits = find(typed, all) as typeof all;
  return (
    <section aria-live="polite">
      <h2>{hits.length > 0 ? text.found(hits.length) : text.nothing}</h2>
      {hits.map(({ one }) => (
        <RelationFold
          key={`${one.relation} ${hits.length <= OPENED}`}
          known={one}
          open={hits.length <= OPENED}
        />
      ))}
    </section>
  );
}

function wordsOf(one: Known): string {
  const sources = one.proofs.map(({ what, source }) => `${what} ${source}`);
  return [one.relation, one.formula, one.validity, one.source, one.checked, ...sources].join(" ");
}
