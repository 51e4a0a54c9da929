import { drySurface, type Surface } from '../colour/surface.ts';
import { combinations } from '../numeric/combinations.ts';
import { colourOfWashes } from './colour-of-washes.ts';
import { consistencyOf, usualLoad } from './consistency.ts';
import {
  type ChartDark,
  type ChartSwatch,
  chartRatios,
  chartStrengths,
  type MixingChart,
  wholeParts,
} from './mix.ts';
import type { Paint } from './paint.ts';

/** Darks are mixed as stiff as a brush still takes up (own): butter. */
const darkLoad = usualLoad('butter');
/** A mix lighter than this L* is no dark: value 4 (own). */
const stillDark = 41;
const mostDarks = 8;
/** Under this C* a dark counts as neutral (own). */
const neutral = 6;
/** A third paint must make a dark at least this much darker than any two of the three, L* (own). */
const thirdPaint = 1;

const isNeutral = ([, a, b]: ChartSwatch['dry']): boolean => Math.hypot(a, b) < neutral;

function swatch(
  paints: readonly Paint[],
  parts: readonly number[],
  load: number,
  surface: Surface,
): ChartSwatch {
  return {
    parts: paints.map(({ id }, i) => ({ paint: id, parts: parts[i] ?? 0 })),
    load,
    consistency: consistencyOf(load),
    dry: colourOfWashes([{ paints, parts, load }], surface),
  };
}

/** Warm towards orange, cool towards blue (common practice, no source). */
function tintOf(lab: ChartSwatch['dry']): ChartDark['tint'] {
  if (isNeutral(lab)) return 'neutral';
  const angle = (60 * Math.PI) / 180;
  return lab[1] * Math.cos(angle) + lab[2] * Math.sin(angle) > 0 ? 'warm' : 'cool';
}

const darker = (one: ChartSwatch, two: ChartSwatch): ChartSwatch =>
  two.dry[0] < one.dry[0] ? two : one;

/**
 * The darkest whole-part mix of some paints, and the darkest neutral one where there is another.
 */
function darkMixes(paints: readonly Paint[], surface: Surface): ChartSwatch[] {
  const all = wholeParts(paints.length).map((parts) => swatch(paints, parts, darkLoad, surface));
  const darkest = all.reduce(darker);
  const greys = all.filter(({ dry }) => isNeutral(dry));
  return greys.length > 0 ? [...new Set([darkest, greys.reduce(darker)])] : [darkest];
}

/** The darks of every pair, and of those triples that go deeper than their pairs; darkest first. */
function darkestMixes(
  pairs: readonly Paint[][],
  triples: readonly Paint[][],
  surface: Surface,
): ChartSwatch[] {
  const ofPairs = pairs.flatMap((pair) => darkMixes(pair, surface));
  const mixed = triples.flatMap((triple) => darkMixes(triple, surface));
  const ofTriples = mixed.filter(({ parts, dry }) => {
    const among = (paint: string): boolean => parts.some((part) => part.paint === paint);
    const own = ofPairs.filter((pair) => pair.parts.every(({ paint }) => among(paint)));
    return own.every((pair) => pair.dry[0] - dry[0] > thirdPaint);
  });
  return [...ofPairs, ...ofTriples]
    .filter(({ dry }) => dry[0] < stillDark)
    .sort((one, two) => one.dry[0] - two.dry[0]);
}

/**
 * What the paints of a palette (up to 7) make together, dry, on the default paper: every pair in
 * three ratios and three strengths, and the darks: the darkest and the darkest neutral mixes of
 * pairs and triples, at most eight, none lighter than value 4.
 */
export function mixingChart(paints: readonly Paint[], surface: Surface = drySurface): MixingChart {
  const sets = (size: number): Paint[][] =>
    combinations(paints.length, size).map((set) => set.map((n) => paints[n]));
  return {
    pairs: sets(2).map((pair) => ({
      paints: [pair[0].id, pair[1].id],
      ratios: chartRatios.map((ratio) =>
        chartStrengths.map((word) => swatch(pair, ratio, usualLoad(word), surface)),
      ),
    })),
    darks: darkestMixes(sets(2), sets(3), surface)
      .slice(0, mostDarks)
      .map((dark) => ({ ...dark, tint: tintOf(dark.dry) })),
  };
}
