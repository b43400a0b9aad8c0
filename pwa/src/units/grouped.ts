/** The one mark between thousands, in every language: ISO 80000-1 leaves comma and point to decimals. */
const THIN = "\u202f";

/** A written number with its thousands apart; its decimals stay together. */
export function grouped(written: string): string {
  const [whole = "", ...decimals] = written.split(".");
  return [whole.replace(/\B(?=(\d{3})+(?!\d))/g, THIN), ...decimals].join(".");
}
