/** How far or how long a chain had run: read from a draft, and told from a reading. */
import type { Build, Reading } from "../store/records.ts";
import { settings } from "../store/settings.ts";
import { distanceOf, parseRunning, type Ran } from "../units/running.ts";
import type { Draft, Noted } from "./bench.ts";
import type { Reader } from "./draft.ts";
import { text } from "./strings.ts";

export const byOdometer = (draft: Draft) => draft.fields.ran_by === "odometer";

/** What is kept of the running that was typed, or nothing if none was. */
export function readRunning(reader: Reader, draft: Draft): Noted {
  const typed = (draft.fields.ran ?? "").trim();
  if (typed === "") return {};
  const { running } = settings.value;
  const odometer = byOdometer(draft);
  const read = parseRunning(typed, odometer ? distanceOf(running) : running);
  const label = odometer ? text.odometer : text.ran;
  if (!read.ok || (odometer && "hours" in read.ran)) {
    reader.lack(text.unreadable(label));
    return {};
  }
  if ("hours" in read.ran) return { running_since_start_h: read.ran.hours };
  return odometer ? { odometer_km: read.ran.km } : { distance_since_start_km: read.ran.km };
}

/** How far or how long the chain had run at a reading; null where nobody can tell. */
export function ranOf(reading: Reading, builds: Build[]): Ran | null {
  const { running_since_start_h: hours, distance_since_start_km: km, odometer_km: shown } = reading;
  if (typeof hours === "number") return { hours };
  if (typeof km === "number") return { km };
  const start = builds.find((one) => one.id === reading.build_id)?.odometer_km;
  if (typeof shown !== "number" || typeof start !== "number" || shown < start) return null;
  return { km: shown - start };
}
