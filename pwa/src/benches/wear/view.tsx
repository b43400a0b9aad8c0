import { useMemo } from "preact/hooks";
import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk, usesDrive } from "./ask.ts";
import { WearForm } from "./form.tsx";
import { empty, type Method, methods, text } from "./meta.ts";

export function WearView() {
  const on = useBench("wear", empty, toAsk);
  // The answer changes with every key, the form only when it speaks against a field.
  const refused = on?.answer && !on.answer.ok ? on.answer : null;
  const form = useMemo(
    () => on && <WearForm {...on} />,
    [on?.draft, on?.stand.drive, on?.stand.chain, refused],
  );
  if (!on) return null;
  const field = methods[on.draft.method as Method].readings[0]?.field ?? "readings_mm";
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field={field}
      quantity="elongation_percent"
      withDrive={usesDrive(on.draft, on.stand)}
    >
      {form}
    </BenchLayout>
  );
}
