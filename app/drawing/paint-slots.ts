/**
 * A picture from a slot map (index of a slot per pixel) and a colour table (3 bytes a slot, red,
 * green, blue). Writes opaque RGBA bytes into `out` (4 a pixel); a slot outside the table is white.
 */
export function paintSlots(
  slotMap: Uint8Array,
  table: Uint8ClampedArray,
  out: Uint8ClampedArray,
): void {
  if (out.length !== slotMap.length * 4) throw new RangeError('out must hold 4 bytes a pixel');
  const colours = new Uint8ClampedArray(256 * 4).fill(255);
  for (let slot = 0; slot * 3 + 2 < table.length && slot < 256; slot++) {
    colours.set(table.subarray(slot * 3, slot * 3 + 3), slot * 4);
  }
  paintBySlot(slotMap, colours, out);
}

/** The same from 4 bytes a slot, for all 256 of them: red, green, blue, alpha. */
export function paintBySlot(
  slotMap: Uint8Array,
  colours: Uint8ClampedArray,
  out: Uint8ClampedArray,
): void {
  // One 32-bit write a pixel; the order of bytes in it is the machine's own.
  const words = new Uint32Array(colours.buffer, colours.byteOffset, 256);
  const target = new Uint32Array(out.buffer, out.byteOffset, slotMap.length);
  for (let i = 0; i < slotMap.length; i++) target[i] = words[slotMap[i] as number] as number;
}
