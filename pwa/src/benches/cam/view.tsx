import { BenchLayout } from "../layout.tsx";
import { useBench } from "../use-bench.ts";
import { toAsk } from "./ask.ts";
import { CamForm } from "./form.tsx";
import { empty, text } from "./meta.ts";
import "../../styles/setting.css";

export function CamView() {
  const on = useBench("cam", empty, toAsk);
  if (!on) return null;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="checking_height_mm"
      quantity="intake_centreline_deg"
      withDrive={false}
    >
      <CamForm {...on} />
      {on.savedId && (
        <a class="button button-wide" href="#/adjust">
          {text.toAdjuster}
        </a>
      )}
    </BenchLayout>
  );
}
