import { consistencyOf } from '../../../app/model/consistency.ts';
import {
  type ChartDark,
  type ChartSwatch,
  chartLoads,
  chartRatios,
  type MixingChart,
} from '../../../app/model/mixing-chart.ts';
import type { Paint } from '../../../app/model/paint.ts';
import { combinations } from '../palette/combinations.ts';
import { wholeParts } from '../palette/whole-parts.ts';
import { colourOfWashes } from './colour-of-washes.ts';

/** Darks are looked for stiff, as a brush still takes them up (own figure): butter. */
const darkLoad = 24;
const mostDarks = 6;
/** Under this C* a dark counts as neutral (own figure). */
const neutral = 4;

function swatch(paints: readonly Paint[], parts: readonly number[], load: number): ChartSwatch {
  return {
    parts: paints.map(({ id }, i) => ({ paint: id, parts: parts[i] ?? 0 })),
    load,
    consistency: consistencyOf(load),
    dry: colourOfWashes([{ paints, parts, load }]),
  };
}

/** Warm on the side of orange, cool on that of blue (common practice, no source). */
function tintOf([, a, b]: ChartSwatch['dry']): ChartDark['tint'] {
  if (Math.hypot(a, b) < neutral) return 'neutral';
  const angle = (60 * Math.PI) / 180;
  return a * Math.cos(angle) + b * Math.sin(angle) > 0 ? 'warm' : 'cool';
}

/** The darkest whole-part mix of some paints. */
const darkestMix = (paints: readonly Paint[]): ChartSwatch =>
  wholeParts(paints.length)
    .map((parts) => swatch(paints, parts, darkLoad))
    .reduce((one, two) => (two.dry[0] < one.dry[0] ? two : one));

/** A third paint has to make a dark so much darker than two of the three, L* (own figure). */
const thirdPaint = 1;

/** The darkest mix of every pair, and of those triples that go deeper than their pairs; darkest first. */
function darkestMixes(pairs: readonly Paint[][], triples: readonly Paint[][]): ChartSwatch[] {
  const ofPairs = pairs.map(darkestMix);
  const ofTriples = triples.map(darkestMix).filter(({ parts, dry }) => {
    const among = (paint: string): boolean => parts.some((part) => part.paint === paint);
    const own = ofPairs.filter((pair) => pair.parts.every(({ paint }) => among(paint)));
    return own.every((pair) => pair.dry[0] - dry[0] > thirdPaint);
  });
  return [...ofPairs, ...ofTriples].sort((one, two) => one.dry[0] - two.dry[0]);
}

/**
 * What the paints of a palette (up to 7) make together, dry, on the default paper: every pair in three ratios
 * and three strengths, and the darkest mixes of pairs and triples, at most six.
 */
export function mixingChart(paints: readonly Paint[]): MixingChart {
  const sets = (size: number): Paint[][] =>
    combinations(paints.length, size).map((set) => set.map((n) => paints[n] as Paint));
  return {
    pairs: sets(2).map((pair) => ({
      paints: [(pair[0] as Paint).id, (pair[1] as Paint).id],
      ratios: chartRatios.map((ratio) => chartLoads.map((load) => swatch(pair, ratio, load))),
    })),
    darks: darkestMixes(sets(2), sets(3))
      .slice(0, mostDarks)
      .map((dark) => ({ ...dark, tint: tintOf(dark.dry) })),
  };
}
