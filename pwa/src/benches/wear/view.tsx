import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk, usesDrive } from "./ask.ts";
import { WearForm } from "./form.tsx";
import { empty, type Method, methods, text } from "./meta.ts";

export function WearView() {
  const on = useBench("wear", empty, toAsk);
  if (!on) return null;
  const field = methods[on.draft.method as Method].readings[0]?.[0] ?? "readings_mm";
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field={field}
      quantity="elongation_percent"
      withDrive={usesDrive(on.draft, on.stand)}
    >
      <WearForm {...on} />
    </BenchLayout>
  );
}
