import { useMemo } from "preact/hooks";
import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { SlackForm } from "./form.tsx";
import { empty, type Method, methods, text } from "./meta.ts";

export function SlackView() {
  const on = useBench("slack", empty, toAsk);
  // The answer changes with every key, the form only when it speaks against a field.
  const refused = on?.answer && !on.answer.ok ? on.answer : null;
  const form = useMemo(
    () => on && <SlackForm {...on} />,
    [on?.draft, on?.stand.drive, on?.stand.chain, refused],
  );
  if (!on) return null;
  const { field, calc } = methods[on.draft.method as Method];
  const quantity = calc === "crank-rock" ? "crank_rock_deg" : "movement_mm";
  return (
    <BenchLayout on={on} title={text.title} field={field} quantity={quantity}>
      {form}
    </BenchLayout>
  );
}
