/**
 * One sample of a layer of paint over a ground, with its slopes: writes the reflectance R to
 * out[start], dR / dKX to out[start + 1], dR / dSX to out[start + 2].
 *
 * Kubelka (1948), J. Opt. Soc. Am. 38, 448-457: R = (1 - Rg (a - b coth bSX)) / (a - Rg + b coth
 * bSX). Multiplied by SX and written with A = KX + SX, w = bSX = sqrt(KX (KX + 2 SX)) and C = w
 * coth w it is R = (SX - Rg (A - C)) / (A - SX Rg + C), which has no zero to divide by: C is at
 * least 1. The slopes are those of this form; C' = dC / d(w^2) = (C - C^2 + w^2) / (2 w^2), 1/3
 * where w is 0.
 *
 * kx, sx: optical depths, at least 0. ground: reflectance 0..1, without the surface. Good to 1e-9.
 */
export function writeLayerSlopes(
  kx: number,
  sx: number,
  ground: number,
  out: Float64Array,
  start: number,
): void {
  const a = kx + sx;
  const squared = kx * (kx + 2 * sx);
  const w = Math.sqrt(squared);
  const beyond = w > 1e-9 ? (2 * w) / Math.expm1(2 * w) : 1 - w; // C - w, with all its digits
  const c = w + beyond;
  // Twice C'. Below 0.003 the difference loses its digits and two terms of the series are good to
  // 1e-12.
  const bend = squared > 1e-5 ? (c - beyond * (c + w)) / squared : 2 / 3 - (4 * squared) / 45;
  const cAlongK = a * bend;
  const cAlongS = kx * bend;
  const divisor = a - sx * ground + c;
  const r = (sx - ground * (a - c)) / divisor;
  out[start] = r;
  out[start + 1] = (ground * (cAlongK - 1) - r * (1 + cAlongK)) / divisor;
  out[start + 2] = (1 + ground * (cAlongS - 1) - r * (1 - ground + cAlongS)) / divisor;
}
