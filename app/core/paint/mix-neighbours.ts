import type { Lab } from '../colour/lab.ts';
import { labOfReflectance, type Spectrum, spectrumSize } from '../colour/spectrum.ts';
import { drySurface, type Surface } from '../colour/surface.ts';
import { lightnessOfOneValue, mostPaintsInMix, mostParts, mostToOne } from '../limits.ts';
import { notInPalette } from '../words/faults.ts';
import {
  loadForLightness,
  paperInside,
  reflectanceOfWashes,
  type Wash,
} from './colour-of-washes.ts';
import { consistencyOf } from './consistency.ts';
import { layOver, mixSpectra, paintLayer } from './layer.ts';
import {
  type Addition,
  type LaidMix,
  type MixNeighbour,
  type MixNeighbours,
  type NeighbourWay,
  neighbourWays,
  type Part,
} from './mix.ts';
import type { Paint } from './paint.ts';
import { wetLab } from './wet-look.ts';

/** Nobody adds one part of a paint to more parts of the old puddle than this (own). */
const mostOld = 12;

const isLopsided = (parts: readonly Part[]): boolean => {
  const counts = parts.map(({ parts: n }) => n);
  return Math.max(...counts) > mostToOne * Math.min(...counts);
};

/** A mix next to another: one part of a paint to `to` parts of it. */
interface NearbyParts {
  readonly parts: readonly Part[];
  readonly added: string;
  readonly to: number;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/**
 * All mixes made by adding one part of a paint of the palette to a puddle of whole parts: to the
 * puddle once over, to twice as much of it, and so on, while the parts (in lowest terms) sum to at
 * most 8. Paints it has come first, as the palette lists them; at most three paints.
 */
export function nearbyParts(parts: readonly Part[], palette: readonly string[]): NearbyParts[] {
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  const has = (paint: string): boolean => parts.some((part) => part.paint === paint);
  const own = parts.length > 1 ? palette.filter(has) : [];
  const others = parts.length < mostPaintsInMix ? palette.filter((paint) => !has(paint)) : [];
  const found: NearbyParts[] = [];
  for (const added of [...own, ...others]) {
    for (let times = 1; sum * times <= mostOld; times++) {
      const grown = parts.map(({ paint, parts: n }) => ({
        paint,
        parts: n * times + (paint === added ? 1 : 0),
      }));
      if (!has(added)) grown.push({ paint: added, parts: 1 });
      const common = grown.map((part) => part.parts).reduce(divisor);
      if (sum * times + 1 > mostParts * common) continue;
      const least = grown.map(({ paint, parts: n }) => ({ paint, parts: n / common }));
      if (isLopsided(least)) continue;
      found.push({ parts: least, added, to: sum * times });
    }
  }
  return found;
}

/**
 * Hue angles in a*, b*, degrees: about where red, yellow, green and blue look pure (from memory);
 * warm towards orange, cool the other way (common practice, no source).
 */
const hueOfWay = {
  warmer: 60,
  cooler: 240,
  'more yellow': 90,
  'more red': 25,
  'more blue': 260,
  'more green': 160,
} as const satisfies Partial<Record<NeighbourWay, number>>;

type ColourWay = keyof typeof hueOfWay | 'duller' | 'clearer';

/** Below this much a* and b* a colour has no hue to be duller or clearer in. */
const leastChroma = 4;

/** The way as a direction of length 1 in a*, b*, seen from a colour; null where it has none. */
export function directionOf(way: ColourWay, [, a, b]: Lab): readonly [a: number, b: number] | null {
  if (way === 'duller' || way === 'clearer') {
    const chroma = Math.hypot(a, b);
    if (chroma < leastChroma) return null;
    const sign = way === 'clearer' ? 1 : -1;
    return [(sign * a) / chroma, (sign * b) / chroma];
  }
  const angle = (hueOfWay[way] * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

const halfValue = lightnessOfOneValue / 2;
/** A shift in a*, b* shorter than this is not seen (own) ... */
const leastShift = 2.5;
/** ... and one whose direction is more than 45 degrees off goes another way. */
const mostlyThatWay = Math.SQRT1_2;
/** A mix with a third paint must be this much nearer: two paints before three (own). */
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
  readonly #surface: Surface;
  readonly #sheet = new Float64Array(spectrumSize);

  constructor(paints: readonly Paint[], below: readonly LaidMix[], surface: Surface) {
    this.#paints = paints;
    this.#surface = surface;
    const washes = below.map((mix) => this.washOf(mix));
    this.#ground = reflectanceOfWashes(washes, paperInside(surface));
  }

  paintOf(id: string): Paint {
    const paint = this.#paints.find((each) => each.id === id);
    if (!paint) throw new RangeError(notInPalette(id));
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
    const dry = labOfReflectance(this.#sheet, this.#surface);
    return { dry, wet: wetLab(this.#sheet, this.#surface) };
  }

  loadFor(parts: readonly Part[], lightness: number): number | null {
    const { paints, parts: shares } = this.washOf({ parts, load: 1 });
    const mix = mixSpectra(paints, shares);
    const load = loadForLightness(mix, this.#ground, lightness, this.#surface);
    return load && Number(load.toPrecision(digits));
  }
}

function byStrength(
  way: 'half a value lighter' | 'half a value darker',
  mix: LaidMix,
  own: Lab,
  over: OverGround,
): MixNeighbour | null {
  const wanted = own[0] + (way === 'half a value lighter' ? halfValue : -halfValue);
  const load = over.loadFor(mix.parts, wanted);
  if (load === null) return null;
  const consistency = consistencyOf(load);
  const add: Addition = { change: 'strength', from: mix.load, to: load };
  return { way, parts: mix.parts, load, consistency, ...over.look({ ...mix, load }), add };
}

interface Candidate extends NearbyParts, Look {
  readonly load: number;
}

/** What adding one part does at the same lightness; where that can't be had, at the same load. */
function candidates(mix: LaidMix, own: Lab, palette: readonly string[], over: OverGround) {
  return nearbyParts(mix.parts, palette).map((nearby): Candidate => {
    const load = over.loadFor(nearby.parts, own[0]) ?? mix.load;
    return { ...nearby, load, ...over.look({ parts: nearby.parts, load }) };
  });
}

function byColour(
  way: Exclude<NeighbourWay, 'half a value lighter' | 'half a value darker'>,
  own: Lab,
  all: readonly Candidate[],
  paintCount: number,
  over: OverGround,
): MixNeighbour | null {
  const direction = directionOf(way, own);
  if (!direction) return null;
  let nearest: Candidate | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const each of all) {
    const [da, db] = [each.dry[1] - own[1], each.dry[2] - own[2]];
    const along = da * direction[0] + db * direction[1];
    if (along < leastShift || along < mostlyThatWay * Math.hypot(da, db)) continue;
    const far =
      Math.hypot(each.dry[0] - own[0], da, db) +
      (each.parts.length > Math.max(2, paintCount) ? thirdPaint : 0);
    if (far >= least) continue;
    nearest = each;
    least = far;
  }
  if (!nearest) return null;
  const { parts, load, dry, wet, added, to } = nearest;
  const add: Addition = {
    change: 'part',
    paint: over.paintOf(added).name,
    isMore: parts.length <= paintCount,
    to,
  };
  return { way, parts, load, consistency: consistencyOf(load), dry, wet, add };
}

/**
 * The nearest whole-part mixes (sum at most 8, at most three paints of the palette) round a mix:
 * half a value (5 L*) lighter and darker by strength alone, and every hue direction in which one
 * part of a paint goes, at the same lightness. `paints` is the palette with its optics, `below` the
 * dried washes under it, first one first; `surface` what the plan was made with. Ways that lead nowhere are left out. Throws RangeError
 * for a paint that is not in the palette.
 */
export function mixNeighbours(
  paints: readonly Paint[],
  below: readonly LaidMix[],
  mix: LaidMix,
  surface: Surface = drySurface,
): MixNeighbours {
  const over = new OverGround(paints, below, surface);
  const own = over.look(mix);
  const palette = paints.map(({ id }) => id);
  const all = candidates(mix, own.dry, palette, over);
  const neighbours = neighbourWays
    .map((way) =>
      way === 'half a value lighter' || way === 'half a value darker'
        ? byStrength(way, mix, own.dry, over)
        : byColour(way, own.dry, all, mix.parts.length, over),
    )
    .filter((neighbour) => neighbour !== null);
  return { ...own, neighbours };
}
