/** Pixels near soft edges: whose colour mixes into them, and how much of it, 1..128 of 256. */
export interface SoftBlend {
  readonly pixels: Uint32Array<ArrayBuffer>;
  readonly partners: Uint8Array<ArrayBuffer>;
  readonly shares: Uint8Array<ArrayBuffer>;
}

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
  for (let i = 0; i < slotMap.length; i++) target[i] = words[slotMap[i]];
}

/**
 * A picture from a slot map and a colour table as `paintSlots` makes it, with colours running into each
 * other at soft edges. Mixed in encoded sRGB, which rises nearly as lightness does.
 */
export function paintSoft(
  slotMap: Uint8Array,
  { pixels, partners, shares }: SoftBlend,
  table: Uint8ClampedArray,
  out: Uint8ClampedArray,
): void {
  paintSlots(slotMap, table, out);
  for (let i = 0; i < pixels.length; i++) {
    const other = partners[i] * 3;
    if (other + 2 >= table.length) continue;
    const share = shares[i];
    const own = 256 - share;
    const at = pixels[i] * 4;
    // At most 255 x 256, so whole numbers stay whole; 128 rounds.
    out[at] = (out[at] * own + table[other] * share + 128) >> 8;
    out[at + 1] = (out[at + 1] * own + table[other + 1] * share + 128) >> 8;
    out[at + 2] = (out[at + 2] * own + table[other + 2] * share + 128) >> 8;
  }
}

/** A slot map at a smaller size, nearest pixel: enough for a strip of small pictures. */
export function shrinkSlots(
  slotMap: Uint8Array,
  width: number,
  height: number,
  longSidePx: number,
): { slotMap: Uint8Array; width: number; height: number } {
  const scale = Math.min(1, longSidePx / Math.max(width, height));
  const w = Math.max(1, Math.round(width * scale));
  const h = Math.max(1, Math.round(height * scale));
  const out = new Uint8Array(w * h);
  for (let y = 0; y < h; y++) {
    const row = Math.min(height - 1, Math.floor(((y + 0.5) * height) / h)) * width;
    for (let x = 0; x < w; x++)
      out[y * w + x] = slotMap[row + Math.min(width - 1, Math.floor(((x + 0.5) * width) / w))];
  }
  return { slotMap: out, width: w, height: h };
}
