/** Any other start than the standard's, for a second hash beside it. */
const otherStart = 40389;

/** The offset basis of the standard. */
const fnvStart = 2166136261;

/**
 * A number of 32 bits that tells one row of codes (bytes, or code units of a text) from another: FNV-1a,
 * Fowler, Noll and Vo (from memory). No secret: only the same number for the same codes.
 */
export function hashCodes(codes: Uint8Array | Uint16Array, start: number = fnvStart): number {
  let hash = start;
  for (let i = 0; i < codes.length; i++) hash = Math.imul(hash ^ codes[i], 16777619);
  return hash >>> 0;
}

/** `hashCodes` of the code units of a text. */
export function hashText(text: string, start: number = fnvStart): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 16777619);
  return hash >>> 0;
}

/** Tells a text from any other: two hashes with different starts, 64 bits together. */
export const textFingerprint = (text: string): string =>
  [fnvStart, otherStart].map((start) => hashText(text, start).toString(36)).join('');

/** As `textFingerprint`, of a row of numbers, bit by bit. */
export function numbersFingerprint(numbers: readonly number[]): string {
  const codes = new Uint16Array(Float64Array.from(numbers).buffer);
  return [fnvStart, otherStart].map((start) => hashCodes(codes, start).toString(36)).join('');
}
