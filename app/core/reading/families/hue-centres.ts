import type { ColourBins } from './colour-bins.ts';

// Weighted k-means over the colour cells (Lloyd, 'Least squares quantization in PCM', 1982). Every
// start is fixed: the mean, then each time the cell whose weight times squared distance to the
// centres so far is largest. Means are taken in a*, b*, never of hue angles, so nothing breaks at 0.
export type HueCentre = readonly [a: number, b: number];

export interface HueCentres {
  readonly centres: readonly HueCentre[];
  /** Mean squared distance of the colours to their centre. */
  readonly cost: number;
}

const rounds = 40;

const squaredTo = (centre: HueCentre, a: number, b: number): number =>
  (a - centre[0]) * (a - centre[0]) + (b - centre[1]) * (b - centre[1]);

/** Which of the centres is nearest; the first of several. */
export function nearestCentre(centres: readonly HueCentre[], a: number, b: number): number {
  let best = Number.POSITIVE_INFINITY;
  let which = 0;
  for (let k = 0; k < centres.length; k++) {
    const distance = squaredTo(centres[k], a, b);
    if (distance >= best) continue;
    best = distance;
    which = k;
  }
  return which;
}

/** One round: every cell to its nearest centre, every centre to the mean of its cells. */
function moved(cells: ColourBins, centres: readonly HueCentre[]): HueCentres {
  const sums = centres.map(() => [0, 0, 0] as [number, number, number]);
  let cost = 0;
  for (let i = 0; i < cells.count; i++) {
    const a = cells.a[i];
    const b = cells.b[i];
    const weight = cells.weight[i];
    const which = nearestCentre(centres, a, b);
    cost += weight * squaredTo(centres[which], a, b);
    const sum = sums[which];
    sum[0] += weight * a;
    sum[1] += weight * b;
    sum[2] += weight;
  }
  const next = sums.map(
    ([a, b, weight], k): HueCentre => (weight > 0 ? [a / weight, b / weight] : centres[k]),
  );
  return { centres: next, cost: cells.total > 0 ? cost / cells.total : 0 };
}

/** The centres that these come to rest at. */
export function settled(cells: ColourBins, start: readonly HueCentre[]): HueCentres {
  let found = moved(cells, start);
  for (let i = 0; i < rounds; i++) {
    const next = moved(cells, found.centres);
    const still = next.centres.every(
      ([a, b], k) => Math.abs(a - found.centres[k][0]) + Math.abs(b - found.centres[k][1]) < 1e-6,
    );
    found = next;
    if (still) break;
  }
  return found;
}

/** The colour that lies worst with the centres so far. */
export function worst(cells: ColourBins, centres: readonly HueCentre[]): HueCentre {
  let best = -1;
  let farthest = 0;
  for (let i = 0; i < cells.count; i++) {
    const a = cells.a[i];
    const b = cells.b[i];
    const own = centres[nearestCentre(centres, a, b)];
    const gain = cells.weight[i] * squaredTo(own, a, b);
    if (gain <= best) continue;
    best = gain;
    farthest = i;
  }
  return [cells.a[farthest], cells.b[farthest]];
}

/** The centres for 1, 2 ... `most` groups, in that order; one at [0, 0] where no colour is to be seen. */
export function hueCentres(cells: ColourBins, most: number): HueCentres[] {
  const found: HueCentres[] = [];
  let start: readonly HueCentre[] = [[0, 0]];
  for (let k = 1; k <= most; k++) {
    const clusters = settled(cells, start);
    found.push(clusters);
    if (cells.count <= k) break;
    start = [...clusters.centres, worst(cells, clusters.centres)];
  }
  return found;
}
