import { labelOf } from "../core/terms.ts";
import { Icon } from "../shell/icon.tsx";
import { RelationFold } from "./relation.tsx";
import { text } from "./strings.ts";
import type { Methods } from "./use-methods.ts";

// What is read to, and what it is read from.
const OPENED = 2;

/** What one figure comes from: its relations, the most telling open. */
export function OfFigure({ figure, methods }: { figure: string; methods: Methods }) {
  const names = methods.figures.find((one) => one.figure === figure)?.relations ?? [];
  const all = methods.subjects.flatMap(({ relations }) => relations);
  const found = names.flatMap((name) => all.filter(({ relation }) => relation === name));
  return (
    <section class="of-figure">
      <button type="button" class="button" onClick={() => history.back()}>
        <Icon name="back" />
        {text.backToResult}
      </button>
      <h2>{text.ofFigure(text.figures[figure] ?? labelOf(figure))}</h2>
      <p class="small">{text.ofFigureNote}</p>
      {found.map((one, at) => (
        <RelationFold key={one.relation} known={one} open={at < OPENED} />
      ))}
      <p>
        <a href="#/methods">{text.allMethods}</a>
      </p>
    </section>
  );
}
