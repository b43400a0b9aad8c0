/** Words of the input controls. */
import { words } from "../words/words.ts";

export const text = words("controls", {
  unitOf: (label: string) => `Unit of ${label}`,
  add: "Add",
  addReading: (label: string) => `Add to ${label}`,
  remove: (what: string) => `Remove ${what}`,
  space: "space",
  spaceName: "Space",
  readAs: "Read as",
  got: (label: string, got: string, need: string) => `${label}: got “${got}”, needs ${need}.`,
  readingNumber: (index: number) => `reading ${index}`,
  fractionKeys: "Fraction and unit keys",
});
