import type { ColourBins } from './colour-bins.ts';
import { type HueCentre, nearestCentre, settled, worst } from './hue-centres.ts';

/** A family is parted where so much of the picture ... */
const partShare = 0.005;
/** ... differs from it by this at like value, CIE a*, b* (both own: what is seen at first glance). */
const partApart = 12;

/** Share of the picture's pixels, 0..1, in these bins that differ from a centre that much at their own value. */
function farShare(cells: ColourBins, own: readonly number[], [a, b]: HueCentre): number {
  let share = 0;
  for (const i of own) {
    const apart = Math.hypot(cells.a[i] - a, cells.b[i] - b) * cells.shade[i];
    if (apart >= partApart) share += cells.share[i];
  }
  return share;
}

/** These bins of the list. */
export function pickBins(cells: ColourBins, own: readonly number[]): ColourBins {
  const picked = (values: Float64Array): Float64Array => Float64Array.from(own, (i) => values[i]);
  const weight = picked(cells.weight);
  return {
    count: own.length,
    a: picked(cells.a),
    b: picked(cells.b),
    weight,
    total: weight.reduce((sum, one) => sum + one, 0),
    share: picked(cells.share),
    shade: picked(cells.shade),
    shadow: cells.shadow,
  };
}

/** The bins of several lists as one; bins of one place need not be one. */
export function joinBins(lists: readonly ColourBins[]): ColourBins {
  const all = (values: (bins: ColourBins) => Float64Array): Float64Array =>
    Float64Array.from(lists.flatMap((bins) => [...values(bins)]));
  const weight = all((bins) => bins.weight);
  return {
    count: weight.length,
    a: all((bins) => bins.a),
    b: all((bins) => bins.b),
    weight,
    total: weight.reduce((sum, one) => sum + one, 0),
    share: all((bins) => bins.share),
    shade: all((bins) => bins.shade),
    shadow: lists[0].shadow,
  };
}

/** The bins of every centre. */
function binsByCentre(cells: ColourBins, centres: readonly HueCentre[]): number[][] {
  const own = centres.map((): number[] => []);
  for (let i = 0; i < cells.count; i++) own[nearestCentre(centres, cells.a[i], cells.b[i])].push(i);
  return own;
}

/** The second centre of what one centre holds, and how much of the picture goes to it; null where it is one colour. */
function secondCentre(cells: ColourBins, own: readonly number[], centre: HueCentre) {
  if (farShare(cells, own, centre) < partShare) return null;
  const bins = pickBins(cells, own);
  const { centres } = settled(bins, [centre, worst(bins, [centre])]);
  const [first, second] = centres;
  const [, there] = binsByCentre(bins, centres);
  const share = farShare(bins, there, first);
  return share >= partShare ? { second, share } : null;
}

/**
 * The centres, with more where a family holds another colour: where half a per cent of the picture differs by 12
 * at like value. The largest such part first, until there are `most` centres.
 */
export function partFamilies(
  cells: ColourBins,
  centres: readonly HueCentre[],
  most: number,
): readonly HueCentre[] {
  let parted = centres;
  while (parted.length < most) {
    const own = binsByCentre(cells, parted);
    let best: { readonly second: HueCentre; readonly share: number } | null = null;
    for (const [n, centre] of parted.entries()) {
      const found = secondCentre(cells, own[n], centre);
      if (found && found.share > (best?.share ?? 0)) best = found;
    }
    if (!best) break;
    parted = settled(cells, [...parted, best.second]).centres;
  }
  return parted;
}
