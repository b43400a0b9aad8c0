import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { SlackForm } from "./form.tsx";
import { empty, type Method, methods, text } from "./meta.ts";

export function SlackView() {
  const on = useBench("slack", empty, toAsk);
  if (!on) return null;
  const { field, calc } = methods[on.draft.method as Method];
  const quantity = calc === "crank-rock" ? "crank_rock_deg" : "movement_mm";
  return (
    <BenchLayout on={on} title={text.title} field={field} quantity={quantity}>
      <SlackForm {...on} />
    </BenchLayout>
  );
}
