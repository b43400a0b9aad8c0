import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { AdjustForm } from "./form.tsx";
import { empty, text } from "./meta.ts";
import "../../styles/setting.css";

export function AdjustView() {
  const on = useBench("adjust", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="radius_mm"
      quantity="move_crank_deg"
      withDrive={false}
    >
      <AdjustForm {...on} />
    </BenchLayout>
  );
}
