import { type Lab, writeLabOfXyz, xyzOfLab } from '../colour/lab.ts';
import { addGlance, drySurface } from '../colour/surface.ts';

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

/** Water's refractive index, squared. */
const waterSquared = 1.777;

/**
 * Light that escapes from pores that are full of water, of what escapes from them dry (0..1): inside more of it is
 * thrown back and meets the paint again. Angstrom, A. (1925), The albedo of various surfaces of ground; Lekner, J.
 * and Dorf, M. (1988), Why some things are darker when wet, Applied Optics 27, 1278-1280 (both from memory).
 */
const soaked = (light: number): number => light / (waterSquared * (1 - light) + light);

function seenWet(dry: number, full: number, glance: number): number {
  const { k1 } = drySurface;
  const light = Math.max(0, (dry - k1) / (1 - k1));
  return addGlance((1 - full) * light + full * soaked(light), glance);
}

function wet(dry: Lab, full: number, glance: number): Lab {
  const [x, y, z] = xyzOfLab(dry);
  const out = new Float64Array(3);
  writeLabOfXyz(
    seenWet(x, full, glance),
    seenWet(y, full, glance),
    seenWet(z, full, glance),
    out,
    0,
  );
  return [out[0], out[1], out[2]];
}

/** What a colour, seen dry, looks like while it is wet: darker and mostly stronger. Taken by X, Y and Z. */
export function wetLab(dry: Lab, shine: Shine = 'shiny'): Lab {
  const { full, glance } = wetLooks[shine];
  return wet(dry, full, glance);
}

/** L* by which it may dry lighter, least and most: nobody has measured pale and shiny washes. */
export function dryingShift(
  dry: Lab,
  shine: Shine = 'shiny',
): readonly [least: number, most: number] {
  const { least, most, glance } = wetLooks[shine];
  return [dry[0] - wet(dry, least, glance)[0], dry[0] - wet(dry, most, glance)[0]];
}
