/** Which files a screen needs beside the app's own, so that they are fetched while the app is. */

/** What is loaded together, by name, and where the build put it. */
export type Chunks = Record<string, string>;

/** What all screens are made of. */
const EVERY = "bench";

/** Screens with a chunk of their own; a name that is missing here only comes a little later. */
const OWN: Record<string, string> = {
  shelf: "record",
  fit: "record",
  builds: "record",
  saved: "record",
  drive: "record",
  files: "record",
  settings: "record",
  plan: "prove",
  sessions: "prove",
};

/** Files of the screen that an address such as `#/saved/12` leads to, the nearest first. */
export function filesAhead(hash: string, chunks: Chunks): string[] {
  const [, screen = ""] = hash.split("/");
  const names = [EVERY, OWN[screen]].filter((name) => name !== undefined);
  return names.map((name) => chunks[name]).filter((file) => file !== undefined);
}

/** Begins to fetch them; none is run before the app asks for it. */
export function fetchAhead(): void {
  // Written into the page by the build; while developing there is none, and nothing to gain.
  const written = document.querySelector<HTMLMetaElement>("meta[name=chunks]")?.content;
  if (!written) return;
  for (const href of filesAhead(location.hash, JSON.parse(written) as Chunks)) {
    const link = document.createElement("link");
    link.rel = "modulepreload";
    link.href = href;
    document.head.append(link);
  }
}
