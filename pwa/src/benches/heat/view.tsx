import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { HeatForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function HeatView() {
  const on = useBench("heat", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout on={on} title={text.title} field="movement_mm" quantity="movement_mm">
      <HeatForm {...on} />
    </BenchLayout>
  );
}
