import type { LabQuestion } from "../../store/lab-queue.ts";
import { driveInput } from "../../store/settings.ts";
import type { Draft, Stand } from "../bench.ts";
import { Reader } from "../draft.ts";
import { text as shared } from "../strings.ts";
import { FIGURES, LENGTHS, SPEEDS } from "./meta.ts";

type Question = LabQuestion<"torsion">;

/** The question that a draft makes, or what is still missing for one. */
export function toQuestion(
  draft: Draft,
  { drive, chain, gears }: Stand,
  labelOf: (field: string) => string,
): { question: Question | null; missing: string } {
  const reader = new Reader(draft);
  if (drive) reader.payload.drive = driveInput(drive, chain, gears);
  else reader.lack(shared.needsDrive);
  for (const field of LENGTHS) reader.take(field, "length", labelOf(field));
  for (const field of SPEEDS) reader.take(field, "number", labelOf(field));
  for (const [field] of FIGURES) reader.take(field, "number", labelOf(field));
  const question = reader.missing === "" ? (reader.payload as unknown as Question) : null;
  return { question, missing: reader.missing };
}
