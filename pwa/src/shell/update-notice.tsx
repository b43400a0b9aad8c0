import { signal } from "@preact/signals";
import { text } from "./strings.ts";
import { update, updateWaits } from "./update.ts";

/** True while a bench holds something typed and not saved: no time to change the app. */
export const midEntry = signal(false);

export function UpdateNotice() {
  if (!updateWaits.value || midEntry.value) return null;
  return (
    <p class="notice" role="status">
      {text.updateWaits}{" "}
      <button type="button" class="button" onClick={update}>
        {text.updateNow}
      </button>
    </p>
  );
}
