/** Hex digest of bytes (FIPS 180-4), as a photo's and a copy's files are known by. */
export async function sha256(bytes: Uint8Array<ArrayBuffer> | ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
