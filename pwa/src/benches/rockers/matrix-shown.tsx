/** How the order of tests is shown: a list to tick, and to print. */
import { useEffect, useState } from "preact/hooks";
import type { MatrixResult } from "../../core/results.ts";
import { settingText } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { keep, kept } from "../../store/state.ts";
import { fixed } from "../../units/format.ts";
import { shownText as text } from "./meta.ts";

function glance(result: MatrixResult): Glance {
  const headline = result.proven ? text.proven : text.unproven;
  return {
    figure: "total_min",
    what: text.total,
    number: fixed(result.total_min, 0),
    unit: "min",
    side: "",
    under: text.counts(result.swaps, result.moves),
    tone: result.proven ? "good" : "open",
    outcome: result.proven ? "least" : "near-least",
    word: headline,
    headline,
    scale: {
      quantity: "total_min",
      value: result.total_min,
      low: result.total_min,
      high: result.total_min,
      zones: [],
    },
    limit: null,
  };
}

/** The tests in their order; what is ticked outlives the page. */
function Order({ result }: PicturesProps<MatrixResult>) {
  const [done, setDone] = useState<string[]>([]);
  useEffect(() => {
    void kept<string[]>("ticked:matrix").then((found) => setDone(found ?? []));
  }, []);
  if (!result) return null;
  const toggle = (key: string) => {
    const next = done.includes(key) ? done.filter((one) => one !== key) : [...done, key];
    setDone(next);
    void keep("ticked:matrix", next);
  };
  return (
    <section class="panel">
      <h2>{text.order}</h2>
      <ol class="order">
        {result.order.map((test) => {
          const key = `${test.place} ${test.rocker} ${test.setting_deg}`;
          const changes = [test.swap && text.doSwap, test.move && text.doMove].filter(Boolean);
          const ticked = done.includes(key);
          return (
            <li key={key} class={ticked ? "order-done" : undefined}>
              <label>
                <input type="checkbox" checked={ticked} onChange={() => toggle(key)} />
                <span>
                  <strong>
                    {test.place}.{" "}
                    {text.test(test.rocker, settingText(test.setting_deg, text.asNow))}
                  </strong>
                  <small>
                    {changes.length > 0
                      ? `${changes.join(", ")}: ${fixed(test.change_min, 0)} min`
                      : text.start}
                    {test.baseline && `; ${text.baseline}`}
                  </small>
                </span>
              </label>
            </li>
          );
        })}
      </ol>
      <p class="small">{text.tickNote}</p>
      <button type="button" class="button button-wide" onClick={() => print()}>
        {text.print}
      </button>
    </section>
  );
}

export const matrixShown: Shows<MatrixResult> = {
  glance,
  Reasons: ({ result }: ShownProps<MatrixResult>) => <Notes result={result} />,
  Pictures: Order,
  Details: ({ result }: ShownProps<MatrixResult>) => <Assumed result={result} />,
};
