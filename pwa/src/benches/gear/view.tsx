import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk, usesDrive } from "./ask.ts";
import { GearForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function GearView() {
  const on = useBench("gear", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="readings_mm"
      quantity="radius_loss_mm"
      withDrive={usesDrive(on.draft, on.stand)}
    >
      <GearForm {...on} />
    </BenchLayout>
  );
}
