/** The words of the screen Methods. */
import { words } from "../words/words.ts";

export const text = words("methods", {
  title: "Methods and proofs",
  lead: "Every relation Midspan works by: what it gives, where it holds, where it comes from. Under it, what is in print beside what this device works out now.",
  /** For a reader of another language: what is quoted is in English. */
  quoted: "",
  limits:
    "That a value holds says that formula, code and copying agree with its source. A source can be wrong, and other inputs are not covered.",
  working: "Working out ours",
  trouble: "Ours could not be worked out here:",
  held: (held: number, whole: number) =>
    held === whole ? `All ${whole} values hold` : `${whole - held} of ${whole} values do not hold`,
  origins: (published: number, memory: number) =>
    `${published} published with their source, ${memory} from memory, unverified.`,
  find: "Find a relation",
  findHint: "A word of it, of its source, or of its check.",
  found: (count: number) => (count === 1 ? "1 relation" : `${count} relations`),
  nothing: "Nothing found. Fewer letters find more.",
  subject: (label: string, relations: number, values: number) =>
    `${label} · ${relations} relations${values > 0 ? `, ${values} values` : ""}`,
  values: (held: number, whole: number) => {
    if (held < whole) return `${whole - held} of ${whole} values do not hold`;
    return whole === 1 ? "1 value holds" : `${whole} values hold`;
  },
  formula: "Formula",
  takes: "From",
  result: "Gives",
  validity: "Holds for",
  source: "Source",
  guard: "Checked too",
  guardBy: (checked: string, tests: string) => `${checked} (tests/core/${tests}.py)`,
  noValue: "No published value to hold it against was found.",
  published: "Published",
  ours: "Ours",
  off: "Off by",
  allowed: (allowed: string) => `allowed ${allowed}`,
  holds: "holds",
  fails: "does not hold",
  ofFigure: (figure: string) => `How it is worked out: ${figure}`,
  ofFigureNote:
    "What it comes from, most telling first; each with its inputs, where it holds, its source, and the published values that guard it.",
  backToResult: "Back to the result",
  allMethods: "All methods and proofs",
  figures: {
    combined: "One slack from several readings",
    hot_movement_mm: "Movement, hot",
    bored_movement_mm: "Movement in the moved block",
    duration_deg: "Duration",
    cam_moved_deg: "What another rocker moves",
    total_min: "Order of the tests",
    dynamic_ratio: "Dynamic compression ratio",
    at_running_h: "When it gets there",
    range_deg: "Scatter of the spark",
    gain_kw: "Expected gain",
  } as Record<string, string>,
  all: (count: number) => `Show all ${count}`,
});
