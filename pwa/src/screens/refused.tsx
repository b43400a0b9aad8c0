import type { Waiting } from "../store/records.ts";
import { retry } from "../store/sync.ts";
import { said } from "../words/told.ts";
import { text as gone } from "./gone-strings.ts";
import { text } from "./strings.ts";

/** What the service said against a record, or another device did to it; it stays as it is here. */
export function RefusedRecord({ entry }: { entry: Waiting }) {
  const { refusal } = entry;
  if (entry.conflict) {
    return (
      <section class="panel refusals">
        <h2>{gone.conflictTitle}</h2>
        <p>{gone.conflictNote}</p>
        <a class="button" href={`#/conflict/${entry.key}`}>
          {gone.compare}
        </a>
      </section>
    );
  }
  if (!refusal) return null;
  return (
    <section class="panel refusals">
      <h2>{text.refusedTitle}</h2>
      <p>
        <strong>{said(refusal.title)}.</strong> {said(refusal.detail)}
      </p>
      <ul>
        {refusal.errors.map((one) => (
          <li key={one.field}>
            {one.text} {one.next_step}
          </li>
        ))}
      </ul>
      <p class="small">{text.refusedNote}</p>
      <button type="button" class="button" onClick={() => void retry(entry)}>
        {text.tryAgain}
      </button>
    </section>
  );
}
