/** The words of the frame round the screens. */
export const text = {
  skip: "Skip to the screen",
  drive: "Drive",
  saved: "Saved",
  settings: "Settings",
  engine: "Engine:",
  noEngine: "No engine chosen",
  invented: "Invented",
  onPhone: "On this phone",
  onServer: "On the server",
  nothingYet: "Nothing saved yet",
  sending: "Sending",
  coreTrouble:
    "The calculations cannot run in this browser. Reload once; if it stays, update the browser.",
  waits: (count: number) => (count === 1 ? "1 waits" : `${count} wait`),
  refusedCount: (count: number) => `${count} refused`,
  updateWaits: "A newer version is ready.",
  updateNow: "Update now",
};
