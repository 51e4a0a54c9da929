/**
 * One band of a layer of paint by itself: what it throws back (R0, over black) and lets through (T).
 *
 * Kubelka (1948), J. Opt. Soc. Am. 38, 448-457: R0 = sinh(bSX) / (a sinh(bSX) + b cosh(bSX)) and
 * T = b / (the same). Written here with w = bSX = sqrt(KX (KX + 2 SX)) and only falling exponentials:
 * nothing overflows in a thick layer, and nothing is divided by S, K or the load, so their zeros need
 * no branch but w = 0 (where (1 - exp(-2w)) / w tends to 2).
 *
 * kx, sx: optical depths, at least 0. Writes R0 to out[at], T to out[at + 1], both 0..1.
 */
export function writeLayerBand(kx: number, sx: number, out: Float64Array, at: number): void {
  const w = Math.sqrt(kx * (kx + 2 * sx));
  const shrink = w > 1e-9 ? -Math.expm1(-2 * w) / w : 2;
  const divisor = (kx + sx) * shrink + 1 + Math.exp(-2 * w);
  out[at] = (sx * shrink) / divisor;
  out[at + 1] = (2 * Math.exp(-w)) / divisor;
}
