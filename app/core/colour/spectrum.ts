import { type Lab, writeLabOfXyz } from './lab.ts';
import { lightnessOfLuminance } from './lightness.ts';
import { addGlance, drySurface, escaping, type Surface } from './surface.ts';

/** Every spectrum here has 36 samples: 380, 390 ... 730 nm. */
export const spectrumSize = 36;

/** 36 numbers, one a sample. */
export type Spectrum = ArrayLike<number>;

/**
 * CIE 1931 2-degree colour-matching functions and standard illuminant D65, 380..730 nm at 10 nm.
 * Source: CIE 15, ISO/CIE 11664-1 and 11664-2 (every second value of the 5 nm tables).
 */
export const observerX = [
  0.001368, 0.004243, 0.01431, 0.04351, 0.13438, 0.2839, 0.34828, 0.3362, 0.2908, 0.19536, 0.09564,
  0.03201, 0.0049, 0.0093, 0.06327, 0.1655, 0.2904, 0.4334499, 0.5945, 0.7621, 0.9163, 1.0263,
  1.0622, 1.0026, 0.8544499, 0.6424, 0.4479, 0.2835, 0.1649, 0.0874, 0.04677, 0.0227, 0.01135916,
  0.005790346, 0.002899327, 0.001439971,
] as const;

export const observerY = [
  3.9e-5, 0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098, 0.13902, 0.20802,
  0.323, 0.503, 0.71, 0.862, 0.954, 0.9949501, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503, 0.381,
  0.265, 0.175, 0.107, 0.061, 0.032, 0.017, 0.00821, 0.004102, 0.002091, 0.001047, 0.00052,
] as const;

export const observerZ = [
  0.006450001, 0.02005001, 0.06785001, 0.2074, 0.6456, 1.3856, 1.74706, 1.77211, 1.6692, 1.28764,
  0.8129501, 0.46518, 0.272, 0.1582, 0.07824999, 0.04216, 0.0203, 0.008749999, 0.0039, 0.0021,
  0.001650001, 0.0011, 0.0008, 0.00034, 0.00019, 4.999999e-5, 2e-5, 0, 0, 0, 0, 0, 0, 0, 0, 0,
] as const;

export const daylightD65 = [
  49.9755, 54.6482, 82.7549, 91.486, 93.4318, 86.6823, 104.865, 117.008, 117.812, 114.861, 115.923,
  108.811, 109.354, 107.802, 104.79, 107.689, 104.405, 104.046, 100, 96.3342, 95.788, 88.6856,
  90.0062, 89.5991, 87.6987, 83.2886, 83.6992, 80.0268, 80.2146, 82.2778, 78.2842, 69.7213, 71.6091,
  74.349, 61.604, 69.8856,
] as const;

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

// Read once, for the hottest loops: some ways to load a file look imports up each time.
const writeLabOf = writeLabOfXyz;
const lightnessOf = lightnessOfLuminance;

/** L* alone of the sum of escaping light x `weightY`, to the last digit as `writeLabOfSums` gives it. */
export const lightnessOfSum = (y: number, { k1 }: Surface): number => lightnessOf(addGlance(y, k1));

/** Writes L*, a*, b* of the three sums of escaping light x weight (each 0..1) to out[start ..]. */
export function writeLabOfSums(
  x: number,
  y: number,
  z: number,
  { k1 }: Surface,
  out: Float64Array,
  start: number,
): void {
  writeLabOf(addGlance(x, k1), addGlance(y, k1), addGlance(z, k1), out, start);
}

/**
 * Writes L*, a*, b* (D65, 2 degree) of a reflectance inside the film, 0..1, 36 samples, seen through the surface, to
 * out[start ..]. Source: CIE 15; ISO/CIE 11664-4.
 */
export function writeLab(
  reflectance: Spectrum,
  surface: Surface,
  out: Float64Array,
  start = 0,
): void {
  const { k2 } = surface;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < spectrumSize; i++) {
    const light = escaping(reflectance[i], k2);
    x += light * weightX[i];
    y += light * weightY[i];
    z += light * weightZ[i];
  }
  writeLabOfSums(x, y, z, surface, out, start);
}

/** L*, a*, b* of a reflectance inside the film, 36 samples, seen through the surface. */
export function labOfReflectance(reflectance: Spectrum, surface: Surface = drySurface): Lab {
  const out = new Float64Array(3);
  writeLab(reflectance, surface, out);
  return [out[0], out[1], out[2]];
}
