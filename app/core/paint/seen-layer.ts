import { spectrumSize, weightX, weightY, weightZ, writeLabOfSums } from '../colour/spectrum.ts';
import { drySurface } from '../colour/surface.ts';

/** Falling exponentials are tabulated in steps of one part of this ... */
const stepsPerUnit = 64;
/** ... up to here; what is left of light beyond, 1e-17, is nothing. */
const deepest = 40;
const fallen = Float64Array.from({ length: stepsPerUnit * deepest + 1 }, (_, n) =>
  Math.exp(-n / stepsPerUnit),
);

/** exp(-w) for w of 0 or more, to 1e-15 of it: the nearest tabulated one and five terms of the series from there. */
export function fallOf(w: number): number {
  if (!(w < deepest)) return 0;
  const n = (w * stepsPerUnit + 0.5) | 0;
  const r = n / stepsPerUnit - w;
  return fallen[n] * (1 + r * (1 + r * (0.5 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120))))));
}

// Read once, for the hottest loop of all planning.
const samples = spectrumSize;
const surface = drySurface;
const { k2 } = drySurface;
const [x36, y36, z36] = [weightX, weightY, weightZ];
const toLab = writeLabOfSums;
const fall = fallOf;

/**
 * Reflectance of one sample of a layer over a ground, both inside the surface: `reflectanceOver` of
 * `writeLayerSample`, to 1e-13, with one division.
 */
export function layerOver(k: number, s: number, under: number): number {
  const w = Math.sqrt(k * (k + 2 * s));
  const once = fallOf(w);
  const twice = once * once;
  const isThin = w <= 1e-4;
  const scale = isThin ? 1 : w;
  const shrink = isThin ? 2 - 2 * w + (4 / 3) * w * w : 1 - twice;
  const a = (k + s) * shrink + scale * (1 + twice);
  const b = s * shrink;
  const c = 2 * scale * once;
  const between = Math.max(a - b * under, 1e-12 * a);
  return (b * between + c * c * under) / (a * between);
}

/**
 * Writes L*, a*, b* of a layer of paint over a ground, seen through the dry surface, to `out`: what `writeLayerSample`,
 * `reflectanceOver` and `writeLab` give one after the other, to 1e-11, at less than half the cost. `kx`, `sx` are optical
 * depths, `ground` is inside the surface; 36 samples each.
 *
 * Kubelka (1948) with all fractions brought to one: R0 = B / A and T = C / A of the layer (A, B, C those of
 * `writeLayerSample` times w, so that nothing is divided by w), then over the ground p / q = (B (A - B Rg) + C^2 Rg) /
 * (A (A - B Rg)), of which (1 - k2) p / (q - k2 p) comes out.
 */
export function writeSeenLayer(
  kx: Float64Array,
  sx: Float64Array,
  ground: Float64Array,
  out: Float64Array,
): void {
  const [toX, toY, toZ] = [x36, y36, z36];
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < samples; i++) {
    const k = kx[i];
    const s = sx[i];
    const under = ground[i];
    const w = Math.sqrt(k * (k + 2 * s));
    const once = fall(w);
    const twice = once * once;
    // A very thin layer is left undivided and goes by its series, as in `writeLayerSample`.
    const isThin = w <= 1e-4;
    const scale = isThin ? 1 : w;
    const shrink = isThin ? 2 - 2 * w + (4 / 3) * w * w : 1 - twice;
    const a = (k + s) * shrink + scale * (1 + twice);
    const b = s * shrink;
    const c = 2 * scale * once;
    const between = Math.max(a - b * under, 1e-12 * a);
    const p = b * between + c * c * under;
    const light = ((1 - k2) * p) / (a * between - k2 * p);
    x += light * toX[i];
    y += light * toY[i];
    z += light * toZ[i];
  }
  toLab(x, y, z, surface, out, 0);
}
