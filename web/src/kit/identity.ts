/// Ids made on this device, so that sending the same act twice is harmless.
/// The form is a version 7 UUID (RFC 9562, 5.7): time first, so that ids sort as they were made.

export function newId(now: number = Date.now(), random?: Uint8Array): string {
  const bytes = new Uint8Array(16);
  // getRandomValues is there on a plain-http page of the home network too; randomUUID is not.
  if (random) bytes.set(random);
  else crypto.getRandomValues(bytes);
  let rest = now;
  for (let i = 5; i >= 0; i--) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes[6] = (bytes[6]! & 0x0f) | 0x70;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
