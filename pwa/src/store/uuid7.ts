/** Ids made on the phone: UUIDv7 (RFC 9562), so that lists sort by time of making. */

let lastTime = 0;
let counter = 0;

/** A new UUIDv7; ids made within one millisecond still sort in the order they were made. */
export function uuid7(now: number = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  if (now > lastTime) {
    lastTime = now;
    // Half the 12-bit counter's room is kept free to count upwards.
    counter = (((bytes[6] ?? 0) << 8) | (bytes[7] ?? 0)) & 0x7ff;
  } else if (++counter > 0xfff) {
    counter = 0;
    lastTime += 1;
  }
  let time = lastTime;
  for (let i = 5; i >= 0; i--) {
    bytes[i] = time % 256;
    time = Math.floor(time / 256);
  }
  bytes[6] = 0x70 | (counter >> 8);
  bytes[7] = counter & 0xff;
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [8, 12, 16, 20].reduceRight((s, at) => `${s.slice(0, at)}-${s.slice(at)}`, hex);
}

/** The moment an id was made, from its first 48 bits. */
export function timeOf(id: string): Date {
  return new Date(Number.parseInt(id.replaceAll("-", "").slice(0, 12), 16));
}
