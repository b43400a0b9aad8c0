import { currentEngine } from "../store/settings.ts";
import { readings } from "../store/state.ts";
import { type Newest, newestOf } from "./newest.ts";

/** The true TDC that was found last on the current engine. */
export function lastTdc(): Newest<"tdc"> | null {
  return newestOf(readings.value, currentEngine.value?.id ?? null, "tdc");
}
