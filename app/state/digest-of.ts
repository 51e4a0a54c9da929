/** A number that tells one file's bytes from another's (FNV-1a, 32 bits; Fowler, Noll and Vo). */
export function digestOf(bytes: ArrayBuffer): number {
  let digest = 0x811c9dc5;
  for (const byte of new Uint8Array(bytes)) digest = Math.imul(digest ^ byte, 0x01000193);
  return digest >>> 0;
}
