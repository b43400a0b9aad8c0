/** The words of the language chosen, if it is not English: loaded before any file asks for its own. */
import { language } from "./language.ts";

/** Words of the screens, by the names of their files. */
export let pack: Record<string, unknown> = {};
/** What the core and the service say, by how they say it in English. */
export let phrases: Record<string, string> = {};

/** To be awaited before the app is loaded. Where the words cannot be had, it speaks English. */
export async function loadPack(): Promise<void> {
  if (language === "en") return;
  try {
    ({ pack, phrases } = await import("../es/index.ts"));
  } catch {
    document.documentElement.lang = "en";
  }
}
