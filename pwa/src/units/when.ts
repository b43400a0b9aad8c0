const FORM = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

/** A moment as the phone's owner writes it. */
export function whenText(moment: string): string {
  return FORM.format(new Date(moment));
}
