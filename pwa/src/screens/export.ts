import { db } from "../store/state.ts";

/** Everything on the phone as one JSON file, for safe keeping anywhere. */
export async function exportAll(): Promise<void> {
  const from = await db();
  const [engines, drives, chains, gear_sets, readings] = await Promise.all([
    from.getAll("engines"),
    from.getAll("drives"),
    from.getAll("chains"),
    from.getAll("gear-sets"),
    from.getAll("readings"),
  ]);
  const whole = { format: "midspan-records-1", engines, drives, chains, gear_sets, readings };
  const file = new Blob([JSON.stringify(whole, null, 2)], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = `midspan-${new Date().toISOString().slice(0, 10)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
