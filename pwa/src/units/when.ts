import { locale } from "../words/language.ts";

const FORM = new Intl.DateTimeFormat(locale, { dateStyle: "medium", timeStyle: "short" });

/** A moment as the phone's owner writes it. */
export function whenText(moment: string): string {
  return FORM.format(new Date(moment));
}
