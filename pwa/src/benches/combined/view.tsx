import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { CombinedForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function CombinedView() {
  const on = useBench("combined", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout on={on} title={text.title} field="readings_mm" quantity="movement_mm" partsFirst>
      <CombinedForm {...on} />
    </BenchLayout>
  );
}
