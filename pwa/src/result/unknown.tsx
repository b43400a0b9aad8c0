/** How a result is shown that this version of the app has no screen for. */
import type { AnyResult } from "../core/results.ts";
import { Assumed, Notes } from "./notes.tsx";
import type { Shows } from "./shows.ts";
import { text } from "./strings.ts";

export const unknown: Shows<AnyResult> = {
  glance: (result) => ({
    what: result.calc,
    figure: "",
    number: text.nothing,
    unit: "",
    side: "",
    under: "",
    tone: "open",
    outcome: "unknown",
    word: text.unknown,
    headline: text.unknown,
    scale: { quantity: "", value: 0, low: 0, high: 0, zones: [] },
    limit: null,
  }),
  Reasons: Notes,
  Pictures: () => null,
  Details: Assumed,
};
