/** Share of its own look a dimmed pixel keeps; the rest is neutral grey (own choice). */
const kept = 0.25;
const grey = 128;

/**
 * The reference with all slots but some dimmed towards neutral grey, to show where a step is
 * painted. `reference` and `out` are RGBA bytes, 4 a pixel; they may be the same array.
 */
export function dimAllBut(
  reference: Uint8ClampedArray,
  slotMap: Uint8Array,
  slots: readonly number[],
  out: Uint8ClampedArray,
): void {
  if (reference.length !== slotMap.length * 4 || out.length !== reference.length) {
    throw new RangeError('pictures must hold 4 bytes for each pixel of the slot map');
  }
  const shown = new Uint8Array(256);
  for (const slot of slots) shown[slot] = 1;
  const dimmed = new Uint8ClampedArray(256);
  for (let code = 0; code < 256; code++) dimmed[code] = grey + (code - grey) * kept;
  for (let i = 0, p = 0; i < slotMap.length; i++, p += 4) {
    const bright = shown[slotMap[i] as number] === 1;
    for (let c = p; c < p + 3; c++) {
      const code = reference[c] as number;
      out[c] = bright ? code : (dimmed[code] as number);
    }
    out[p + 3] = 255;
  }
}
