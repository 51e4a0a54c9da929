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
      out[y * w + x] = slotMap[
        row + Math.min(width - 1, Math.floor(((x + 0.5) * width) / w))
      ] as number;
  }
  return { slotMap: out, width: w, height: h };
}
