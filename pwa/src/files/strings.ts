/** Words of export and import. */
import { words } from "../words/words.ts";

export const text = words("files", {
  title: "Export, import",
  exportTitle: "Export",
  exportNote:
    "Everything on this phone as one open file, to keep anywhere or to take to another phone or shop. It works without a signal.",
  exportAll: "Export everything as a file",
  csvNote:
    "Readings as a table for a spreadsheet, units in its header. A text that begins like a formula gets an apostrophe before it.",
  exportReadings: "Export readings as CSV",
  importTitle: "Import",
  importNote:
    "What is new in the file is added. Nothing here is overwritten: what differs is shown with both sides. The same file again changes nothing.",
  choose: "Choose a file to import",
  reading: "Reading the file",
  done: (fresh: number, same: number) => {
    const rest = same > 0 ? ` ${same} were here already, the same.` : "";
    return fresh === 0 ? `Nothing new in the file.${rest}` : `${fresh} added.${rest}`;
  },
  goneKept: (n: number) =>
    `${n === 1 ? "1 record was" : `${n} records were`} deleted where the file comes from: kept here among the removed, to bring back.`,
  gone: {
    here: "Deleted here; it is in the file.",
    there: "Here; deleted where the file comes from.",
  },
  takeGone: { here: "Bring it back, as in the file", there: "Delete it here too" },
  conflicts: "In both, and not the same",
  conflictsNote: "Kept as it is here, unless you take the file's side.",
  here: "Here",
  inFile: "In the file",
  takeTheirs: "Take the file's",
  taken: "Taken from the file.",
  keptOurs: "The reading here stays.",
  bad: "Could not be taken",
  badNote: "Everything else was. Correct these in the file and import it again.",
  place: (kind: string, place: number) => (place === 0 ? kind : `${kind}, number ${place}`),
  kinds: {
    engines: "engine",
    drives: "drive",
    chains: "chain",
    "gear-sets": "gear set",
    builds: "build",
    entries: "entry of a build",
    plans: "plan of running in",
    readings: "reading",
    sessions: "dyno session",
    runs: "dyno run",
  } as Record<string, string>,
  notJson: "This is no JSON file. Choose a file that was exported here or at the service.",
  notOurs:
    "This is not a file of exported records. Choose one that was exported here or at the service.",
  otherVersion: (version: string) =>
    `The file has the form of version ${version}; this app reads version 1. Update the app, then import it again.`,
  noList: "its records are no list",
  unknownKind: "a kind of record this version does not know",
  noObject: "no record",
  noId: "its id is no UUID of version 7",
  twice: "another record has its id",
  noParent: (id: string) => `it refers to ${id}, which is neither here nor in the file`,
  wrongFields: (names: string[]) => `not as they should be: ${names.join(", ")}`,
  noTombstone: "it does not say what was deleted, and when",
  noResult: "its result cannot be read by this version",
  nothing: "nothing",
});
