import "../../styles/lift.css";
import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { LiftForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function LiftView() {
  const on = useBench("lift", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="table_lifts_mm"
      quantity="duration_deg"
      withDrive={false}
    >
      <LiftForm {...on} />
    </BenchLayout>
  );
}
