/** Pairing codes, as typed and as scanned. */

const LINK = /#\/pair\/([^/]+)$/;
const CODE = /^[ -]*([0-9A-Za-z][ -]*){10}$/;

export function isCode(typed: string): boolean {
  return CODE.test(typed);
}

/** The code in a scanned link or in the code alone; null in any other. */
export function codeOfLink(scanned: string): string | null {
  const found = LINK.exec(scanned)?.[1] ?? scanned;
  return isCode(found) ? found : null;
}

/** The address that pairs the device which opens it. */
export function linkOf(code: string): string {
  return `${location.origin}/#/pair/${code}`;
}
