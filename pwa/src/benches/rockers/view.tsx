import "../../styles/lift.css";
import type { Draft, Stand } from "../bench.ts";
import { BenchLayout } from "../layout.tsx";
import { useLiftDraft } from "../lift/lobe.ts";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { RockersForm } from "./form.tsx";
import { empty, text } from "./meta.ts";

export function RockersView() {
  const tables = useLiftDraft();
  const on = useBench("rockers", empty, (draft: Draft, _: Stand) => toAsk(draft, tables));
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="event_height_mm"
      quantity="cam_moved_deg"
      withDrive={false}
    >
      <RockersForm {...on} tables={tables} />
    </BenchLayout>
  );
}
