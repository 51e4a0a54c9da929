import { consistencyOf } from '../../../app/model/consistency.ts';
import type { Lab } from '../../../app/model/lab.ts';
import {
  type LaidMix,
  type MixNeighbour,
  type MixNeighbours,
  type NeighbourWay,
  neighbourWays,
} from '../../../app/model/mix-neighbour.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Part } from '../../../app/model/part.ts';
import { strengthInWords } from '../../../app/model/strength-in-words.ts';
import { reflectanceOfWashes, type Wash } from './colour-of-washes.ts';
import { labOfReflectance } from './lab-of-reflectance.ts';
import { loadForLightness } from './load-for-lightness.ts';
import { mixSpectra } from './mix-spectra.ts';
import { type NearbyParts, nearbyParts } from './nearby-parts.ts';
import { directionOf } from './neighbour-directions.ts';
import { layOver, paintLayer } from './paint-layer.ts';
import { surfaceFloor } from './surface.ts';
import { bandCount, type Spectrum } from './wavelengths.ts';

/** Half a value, L*. */
const halfValue = 5;
/** A shift in a*, b* under this is not seen (own figure) ... */
const leastShift = 2.5;
/** ... and one whose direction is more than 45 degrees off goes another way. */
const mostlyThatWay = Math.SQRT1_2;
/** A third paint has to be nearer by this much: two paints before three (own figure). */
const thirdPaint = 3;
/** A load is given to so many significant digits: finer than anyone mixes. */
const digits = 3;

interface Look {
  readonly dry: Lab;
  readonly wet: Lab;
}

/** The looks and loads of mixes over one ground. */
class OverGround {
  readonly #ground: Spectrum;
  readonly #paints: readonly Paint[];
  readonly #sheet = new Float64Array(bandCount);

  constructor(paints: readonly Paint[], below: readonly LaidMix[]) {
    this.#paints = paints;
    this.#ground = reflectanceOfWashes(below.map((mix) => this.washOf(mix)));
  }

  paintOf(id: string): Paint {
    const paint = this.#paints.find((each) => each.id === id);
    if (!paint) throw new RangeError(`There is no paint '${id}' in this palette. Plan again.`);
    return paint;
  }

  washOf({ parts, load }: LaidMix): Wash {
    const paints = parts.map(({ paint }) => this.paintOf(paint));
    return { paints, parts: parts.map((part) => part.parts), load };
  }

  look(mix: LaidMix): Look {
    const { paints, parts, load } = this.washOf(mix);
    const { K, S } = mixSpectra(paints, parts);
    layOver(paintLayer(K, S, load), this.#ground, this.#sheet);
    return {
      dry: labOfReflectance(this.#sheet),
      wet: labOfReflectance(this.#sheet, surfaceFloor.wet),
    };
  }

  loadFor(parts: readonly Part[], lightness: number): number | null {
    const { paints, parts: shares } = this.washOf({ parts, load: 1 });
    const load = loadForLightness(mixSpectra(paints, shares), this.#ground, lightness);
    return load && Number(load.toPrecision(digits));
  }
}

function byStrength(
  way: 'half a value lighter' | 'half a value darker',
  mix: LaidMix,
  here: Lab,
  over: OverGround,
): MixNeighbour | null {
  const wanted = here[0] + (way === 'half a value lighter' ? halfValue : -halfValue);
  const load = over.loadFor(mix.parts, wanted);
  if (load === null) return null;
  const consistency = consistencyOf(load);
  const add = strengthInWords(load / mix.load);
  return { way, parts: mix.parts, load, consistency, ...over.look({ ...mix, load }), add };
}

interface Candidate extends NearbyParts, Look {
  readonly load: number;
}

/** What adding one part does at the same lightness; where that can't be had, at the same load. */
function candidates(mix: LaidMix, here: Lab, palette: readonly string[], over: OverGround) {
  return nearbyParts(mix.parts, palette).map((nearby): Candidate => {
    const load = over.loadFor(nearby.parts, here[0]) ?? mix.load;
    return { ...nearby, load, ...over.look({ parts: nearby.parts, load }) };
  });
}

function byColour(
  way: Exclude<NeighbourWay, 'half a value lighter' | 'half a value darker'>,
  here: Lab,
  all: readonly Candidate[],
  paintCount: number,
  over: OverGround,
): MixNeighbour | null {
  const direction = directionOf(way, here);
  if (!direction) return null;
  let nearest: Candidate | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const each of all) {
    const [da, db] = [each.dry[1] - here[1], each.dry[2] - here[2]];
    const along = da * direction[0] + db * direction[1];
    if (along < leastShift || along < mostlyThatWay * Math.hypot(da, db)) continue;
    const far =
      Math.hypot(each.dry[0] - here[0], da, db) +
      (each.parts.length > Math.max(2, paintCount) ? thirdPaint : 0);
    if (far >= least) continue;
    nearest = each;
    least = far;
  }
  if (!nearest) return null;
  const { parts, load, dry, wet, added, to } = nearest;
  const more = parts.length > paintCount ? '' : ' more';
  const add = `one part${more} ${over.paintOf(added).name} to ${to} ${to === 1 ? 'part' : 'parts'} of this mix`;
  return { way, parts, load, consistency: consistencyOf(load), dry, wet, add };
}

/**
 * The nearest whole-part mixes (sum at most 8, at most three paints of the palette) round a mix: half a value
 * (5 L*) lighter and darker by strength alone, and every hue direction in which one part of a paint goes, at
 * the same lightness. `paints` is the palette with its optics, `below` the dried washes under it, first one
 * first. Ways that lead nowhere are left out. Throws RangeError for a paint that is not in the palette.
 */
export function mixNeighbours(
  paints: readonly Paint[],
  below: readonly LaidMix[],
  mix: LaidMix,
): MixNeighbours {
  const over = new OverGround(paints, below);
  const here = over.look(mix);
  const palette = paints.map(({ id }) => id);
  const all = candidates(mix, here.dry, palette, over);
  const neighbours = neighbourWays
    .map((way) =>
      way === 'half a value lighter' || way === 'half a value darker'
        ? byStrength(way, mix, here.dry, over)
        : byColour(way, here.dry, all, mix.parts.length, over),
    )
    .filter((neighbour) => neighbour !== null);
  return { ...here, neighbours };
}
