import type { Waiting } from "../store/records.ts";
import { retry } from "../store/sync.ts";
import { text } from "./strings.ts";

/** What the service said against a record; the record itself stays as it is. */
export function RefusedRecord({ entry }: { entry: Waiting }) {
  const { refusal } = entry;
  if (!refusal) return null;
  return (
    <section class="panel refusals">
      <h2>{text.refusedTitle}</h2>
      <p>
        <strong>{refusal.title}.</strong> {refusal.detail}
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
