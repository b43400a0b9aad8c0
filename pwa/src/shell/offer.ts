/** Hands a text to the browser's downloads, as a file of a type under a name. */
export function offer(text: string, type: string, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // Not at once: the download may not have begun yet.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
