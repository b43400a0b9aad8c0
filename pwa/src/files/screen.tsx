import { useState } from "preact/hooks";
import { askPersistence } from "../store/persistence.ts";
import { sync } from "../store/sync.ts";
import { exportAll, exportReadings } from "./export.ts";
import type { Plan } from "./import.ts";
import { Report } from "./report.tsx";
import { text } from "./strings.ts";
import { takeFile } from "./take.ts";

/** Everything out as a file, and back in. */
export function FilesScreen() {
  return (
    <div class="page">
      <h1>{text.title}</h1>
      <section class="panel">
        <h2>{text.exportTitle}</h2>
        <p>{text.exportNote}</p>
        <button type="button" class="button button-main" onClick={() => void exportAll()}>
          {text.exportAll}
        </button>
        <p class="small">{text.csvNote}</p>
        <button type="button" class="button button-wide" onClick={() => void exportReadings()}>
          {text.exportReadings}
        </button>
      </section>
      <Import />
    </div>
  );
}

function Import() {
  const [busy, setBusy] = useState(false);
  const [plan, setPlan] = useState<Plan | null>(null);
  const [refused, setRefused] = useState("");
  const read = async (file: File) => {
    setBusy(true);
    setPlan(null);
    setRefused("");
    const found = await file
      .text()
      .then(takeFile)
      .finally(() => setBusy(false));
    if ("refused" in found) {
      setRefused(found.refused);
      return;
    }
    setPlan(found);
    if (found.fresh.length > 0) await askPersistence();
    void sync();
  };
  return (
    <>
      <section class="panel">
        <h2>{text.importTitle}</h2>
        <p>{text.importNote}</p>
        <label class="button button-wide file-button">
          <input
            type="file"
            accept=".json,application/json"
            disabled={busy}
            onChange={(event) => {
              const input = event.currentTarget;
              const [file] = input.files ?? [];
              if (file)
                void read(file).finally(() => {
                  // So that the same file can be chosen once more.
                  input.value = "";
                });
            }}
          />
          {text.choose}
        </label>
        <p role="status">
          {busy && text.reading}
          {plan && text.done(plan.fresh.length, plan.same)}
        </p>
        {refused && (
          <p class="note wrong" role="alert">
            {refused}
          </p>
        )}
        {plan && plan.gone.length > 0 && <p class="small">{text.goneKept(plan.gone.length)}</p>}
      </section>
      {plan && <Report plan={plan} />}
    </>
  );
}
