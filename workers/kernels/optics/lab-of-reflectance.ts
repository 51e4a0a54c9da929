import type { Lab } from '../../../app/model/lab.ts';
import { daylightD65, observerX, observerY, observerZ } from './standard-observer.ts';
import { surfaceFloor } from './surface.ts';
import { bandCount, type Spectrum } from './wavelengths.ts';

/**
 * D65 x observer, scaled so that a perfect white sums to 1 in each of X, Y, Z: so it is exactly
 * L* 100, a* 0, b* 0, whatever the sums of the 10 nm tables are.
 */
function weights(observer: readonly number[]): Float64Array {
  const products = observer.map((value, i) => value * (daylightD65[i] as number));
  const sum = products.reduce((all, value) => all + value, 0);
  return Float64Array.from(products, (value) => value / sum);
}

export const weightX = weights(observerX);
export const weightY = weights(observerY);
export const weightZ = weights(observerZ);

// ISO/CIE 11664-4: epsilon = 216/24389, kappa = 24389/27.
const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);

/** L* alone of the sum of reflectance x `weightY`, to the last place as `writeLabOfSums` has it. */
export const lightnessOfSum = (y: number, floor: number): number =>
  116 * f(floor + (1 - floor) * y) - 16;

/** Writes L*, a*, b* of the sums of reflectance x weight (each 0..1), as `writeLab` does. */
export function writeLabOfSums(
  x: number,
  y: number,
  z: number,
  floor: number,
  out: Float64Array,
  at: number,
): void {
  const fx = f(floor + (1 - floor) * x);
  const fy = f(floor + (1 - floor) * y);
  const fz = f(floor + (1 - floor) * z);
  out[at] = 116 * fy - 16;
  out[at + 1] = 500 * (fx - fy);
  out[at + 2] = 200 * (fy - fz);
}

/**
 * Writes L*, a*, b* (D65, 2 degree) of a 36-band reflectance 0..1 to out[at..at+2], the surface
 * floor added once. Source: CIE 15; ISO/CIE 11664-4.
 */
export function writeLab(reflectance: Spectrum, floor: number, out: Float64Array, at = 0): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < bandCount; i++) {
    const r = reflectance[i] as number;
    x += r * (weightX[i] as number);
    y += r * (weightY[i] as number);
    z += r * (weightZ[i] as number);
  }
  writeLabOfSums(x, y, z, floor, out, at);
}

/** L*, a*, b* of a 36-band reflectance, seen through a dry surface unless another floor is given. */
export function labOfReflectance(reflectance: Spectrum, floor: number = surfaceFloor.dry): Lab {
  const out = new Float64Array(3);
  writeLab(reflectance, floor, out);
  return [out[0] as number, out[1] as number, out[2] as number];
}
