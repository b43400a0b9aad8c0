/** The language of the screens: chosen once for the whole page, before any of its words are read. */

export const languages = [
  { id: "en", label: "English" },
  { id: "es", label: "Español" },
] as const;
export type Language = (typeof languages)[number]["id"];

/** Not with the other settings: those are read too late, as the words are made with the page. */
const KEPT = "midspan-language";

const isLanguage = (id: string | undefined | null): id is Language =>
  languages.some((one) => one.id === id);

function kept(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null; // no storage here, or none allowed: the device's own language then
  }
}

const device = globalThis.navigator?.language ?? "en";

function wanted(): Language {
  const own = kept();
  if (isLanguage(own)) return own;
  const first = device.split("-")[0];
  return isLanguage(first) ? first : "en";
}

export const language = wanted();

/** For dates and hours: the device's own form of the language, if it has one. */
export const locale = device.startsWith(language) ? device : language;

if (globalThis.document) document.documentElement.lang = language;

/** Takes another language from now on; the page is made anew in it. */
export function speak(id: Language): void {
  localStorage.setItem(KEPT, id);
  location.reload();
}
