import type { Lab } from '../../../app/model/lab.ts';

/**
 * Rows that turn a small Lab difference near a colour into three parts of about equal weight to the
 * eye: lightness, chroma, hue, as CIEDE2000 weighs them (ISO/CIE 11664-6), without its turn in the
 * blues. Their squares sum to about its square. 3 x 3, row by row.
 */
export function seenDifference([lightness, a, b]: Lab): Float64Array {
  const chroma = Math.hypot(a, b);
  const fromMid = (lightness - 50) ** 2;
  const sl = 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
  const sc = 1 + 0.045 * chroma;
  const sh = 1 + 0.015 * chroma;
  const cos = chroma > 1e-9 ? a / chroma : 1;
  const sin = chroma > 1e-9 ? b / chroma : 0;
  return Float64Array.of(1 / sl, 0, 0, 0, cos / sc, sin / sc, 0, -sin / sh, cos / sh);
}
