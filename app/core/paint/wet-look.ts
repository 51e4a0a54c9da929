import { type Lab, writeLabOfXyz, xyzOfLab } from '../colour/lab.ts';
import {
  type Spectrum,
  spectrumSize,
  weightX,
  weightY,
  weightZ,
  writeLabOfSums,
} from '../colour/spectrum.ts';
import { addGlance, drySurface, escaping, type Surface } from '../colour/surface.ts';

/** How paper and wash look while wet. */
interface WetLook {
  /** Share of the pores that are full of water, 0..1: what is taken, and the least and most that it may be. */
  readonly full: number;
  readonly least: number;
  readonly most: number;
  /** Share of the light that the surface throws back. */
  readonly glance: number;
}

/**
 * By the shine of the wash. Satin is fitted to 75 masstones that dry 2.3 L* lighter on average (MacEvoy, B., Watercolor
 * drying shifts); the others are a guess between nothing and full pores.
 */
const wetLooks = {
  shiny: { full: 0.4, least: 0.2, most: 1, glance: 0.01 },
  satin: { full: 0.15, least: 0, most: 0.3, glance: 0.0125 },
} as const satisfies Record<string, WetLook>;

type Shine = keyof typeof wetLooks;

/** Water's refractive index, 1.333, squared (from memory). */
const waterSquared = 1.777;

/**
 * Light that escapes where `full` of the pores hold water, of what escapes dry (0..1): inside more of it is thrown
 * back and meets the paint again. Angstrom, A. (1925), The albedo of various surfaces of ground; Lekner, J. and
 * Dorf, M. (1988), Why some things are darker when wet, Applied Optics 27, 1278-1280 (both from memory).
 */
function escapingWet(dry: number, full: number): number {
  const soaked = dry / (waterSquared * (1 - dry) + dry);
  return (1 - full) * dry + full * soaked;
}

/**
 * What a dry sheet (reflectance inside the surface, 36 samples) looks like while it is wet: darker and mostly
 * stronger.
 */
export function wetLab(
  reflectance: Spectrum,
  { k2 }: Surface = drySurface,
  shine: Shine = 'shiny',
): Lab {
  const { full, glance } = wetLooks[shine];
  const out = new Float64Array(3);
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < spectrumSize; i++) {
    const light = escapingWet(escaping(reflectance[i], k2), full);
    x += light * weightX[i];
    y += light * weightY[i];
    z += light * weightZ[i];
  }
  writeLabOfSums(x, y, z, { k1: glance, k2: 0 }, out, 0);
  return [out[0], out[1], out[2]];
}

/** L* by which a colour dries lighter, as if each of X, Y and Z were one wavelength: too much by up to 6 L*. */
function roughShift(dry: Lab, full: number, glance: number): number {
  const { k1 } = drySurface;
  const [x, y, z] = xyzOfLab(dry).map((seen) =>
    addGlance(escapingWet(Math.max(0, (seen - k1) / (1 - k1)), full), glance),
  );
  const out = new Float64Array(3);
  writeLabOfXyz(x, y, z, out, 0);
  return dry[0] - out[0];
}

/**
 * Where a pure colour's spectrum counts, its shift is this much of the rough one or more. Plans that were made before
 * pale washes had a shift would fall below it.
 */
const leastOfRough = 0.5;

/**
 * L* by which a wash may dry lighter, least and most, from its colours dry and wet: a range, as nobody has measured
 * pale and shiny washes. Within 1.5 L* of the range by wavelength.
 */
export function dryingShift(
  dry: Lab,
  wet: Lab,
  shine: Shine = 'shiny',
): readonly [least: number, most: number] {
  const { full, least, most, glance } = wetLooks[shine];
  const ratio = (dry[0] - wet[0]) / roughShift(dry, full, glance);
  const byWavelength = Math.min(1, Math.max(leastOfRough, ratio));
  return [
    byWavelength * roughShift(dry, least, glance),
    byWavelength * roughShift(dry, most, glance),
  ];
}
