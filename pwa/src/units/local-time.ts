/** Moments as a form types them: local time without a zone, as `datetime-local` gives it. */

const two = (n: number) => String(n).padStart(2, "0");

/** A kept moment in the form of a field; empty for none. */
export function localText(moment: string | null | undefined): string {
  if (!moment) return "";
  const at = new Date(moment);
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/**
 * The moment typed, as it is kept: in UTC. Null for what is no time. Where the minute is still
 * that of `before`, its seconds stay too, so that opening and saving a form moves nothing.
 */
export function momentOf(typed: string, before: string | null = null): string | null {
  if (before !== null && typed === localText(before)) return before;
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(typed)) return null;
  const at = new Date(typed);
  return Number.isNaN(at.getTime()) ? null : at.toISOString();
}
