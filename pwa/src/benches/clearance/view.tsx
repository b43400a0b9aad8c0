import "../../styles/lift.css";
import type { Draft, Stand } from "../bench.ts";
import { BenchLayout } from "../layout.tsx";
import { useLiftDraft } from "../lift/lobe.ts";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { ClearanceForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function ClearanceView() {
  const tables = useLiftDraft();
  const on = useBench("clearance", empty, (draft: Draft, _: Stand) => toAsk(draft, tables));
  if (!on) return null;
  const compression = on.draft.method === "compression";
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="travel_mm"
      quantity={compression ? "dynamic_ratio" : "valve_clearance_mm"}
      withDrive={false}
    >
      <ClearanceForm {...on} tables={tables} />
    </BenchLayout>
  );
}
