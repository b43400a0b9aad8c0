/** The sequence that was under way when the app was put down, to go on with when it is opened. */
import { keep, kept } from "../store/state.ts";
import { route } from "./router.ts";

const NAME = "under-way";

/** Remembers the screen of a sequence that is not finished; null when it is. */
export function setUnderWay(id: string | null): void {
  void keep(NAME, id);
}

/** Opens the sequence under way, unless the address already says where to go. */
export async function resume(): Promise<void> {
  const id = await kept<string | null>(NAME);
  if (!id || route.value.length > 0) return;
  history.replaceState(null, "", `#/${id}`);
  route.value = [id];
}
