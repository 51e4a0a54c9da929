import { reserveWithin, smallestShapeMm } from '../../../app/model/limits.ts';
import type { ToneRange } from '../../../app/model/reading.ts';
import { plannedLightness } from '../../../app/model/tone-range.ts';
import type { KindTones } from './kind-tones.ts';
import { bandOfKind } from './kinds.ts';

export interface MergeSizes {
  /** Shapes under this are merged, px; whites and the darkest only under `accentPx`. */
  readonly shapePx: number;
  readonly accentPx: number;
  /** Bands planned so near to the paper that they may stay white. */
  readonly whiteBands: ReadonlySet<number>;
  readonly darkestBand: number;
}

/** What is too small to paint on this sheet: squares of the smallest short side, `smallestMm`. */
export function mergeSizes(
  tones: KindTones,
  range: ToneRange,
  bandCount: number,
  pxPerMm: number,
  smallestMm: number = smallestShapeMm.darks,
): MergeSizes {
  const whiteBands = new Set<number>();
  for (let band = 1; band <= bandCount; band++) {
    const mean = tones.meanOf((kind) => bandOfKind(kind) === band);
    if (mean && range.paper - plannedLightness(range, mean.tones) <= reserveWithin) {
      whiteBands.add(band);
    }
  }
  return {
    shapePx: (smallestMm * pxPerMm) ** 2,
    accentPx: (Math.min(smallestShapeMm.details, smallestMm) * pxPerMm) ** 2,
    whiteBands,
    darkestBand: bandCount,
  };
}
