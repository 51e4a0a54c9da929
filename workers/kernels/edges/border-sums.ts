import type { EdgeKind } from '../../../app/model/edge.ts';
import type { Border } from '../../../app/model/reading.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { MeasuredContour } from './measure-edges.ts';

interface Sum {
  lengthPx: number;
  contrast: number;
  soft: number;
  lost: number;
}

/** Edges summed up by the two slots they part. */
export class BorderSums {
  readonly #sums = new Map<number, Sum>();

  add({ contour, contrasts, lengths }: MeasuredContour, runs: readonly EdgeRun[]): void {
    const pair = contour.a * 256 + contour.b;
    const sum = this.#sums.get(pair) ?? { lengthPx: 0, contrast: 0, soft: 0, lost: 0 };
    for (let n = 0; n < lengths.length; n++) {
      const length = lengths[n] as number;
      sum.lengthPx += length;
      sum.contrast += length * (contrasts[n] as number);
    }
    const ofKind = (kind: EdgeKind): number =>
      runs.reduce((all, run) => (run.kind === kind ? all + run.lengthPx : all), 0);
    sum.soft += ofKind('soft');
    sum.lost += ofKind('lost');
    this.#sums.set(pair, sum);
  }

  /** By the lower, then the other slot. */
  borders(pxPerMm: number): Border[] {
    return [...this.#sums]
      .sort(([one], [other]) => one - other)
      .map(([pair, { lengthPx, contrast, soft, lost }]) => ({
        a: pair >> 8,
        b: pair & 255,
        lengthMm: lengthPx / pxPerMm,
        contrast: contrast / lengthPx,
        soft: Math.min(1, soft / lengthPx),
        lost: Math.min(1, lost / lengthPx),
      }));
  }
}
