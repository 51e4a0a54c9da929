import type { SoftBlend } from '../model/soft-blend.ts';
import { paintSlots } from './paint-slots.ts';

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
    const other = (partners[i] as number) * 3;
    if (other + 2 >= table.length) continue;
    const share = shares[i] as number;
    const own = 256 - share;
    const at = (pixels[i] as number) * 4;
    // At most 255 x 256, so whole numbers stay whole; 128 rounds.
    out[at] = ((out[at] as number) * own + (table[other] as number) * share + 128) >> 8;
    out[at + 1] = ((out[at + 1] as number) * own + (table[other + 1] as number) * share + 128) >> 8;
    out[at + 2] = ((out[at + 2] as number) * own + (table[other + 2] as number) * share + 128) >> 8;
  }
}
