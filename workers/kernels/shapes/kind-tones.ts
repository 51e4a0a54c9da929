import type { Lab } from '../../../app/model/lab.ts';
import type { ToneMeans } from '../../../app/model/slot.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import { kindsAtMost } from './kinds.ts';

/** Pixels counted and their mean simplified colour and tones. */
export interface MeanTones {
  readonly pixels: number;
  readonly lab: Lab;
  readonly tones: ToneMeans;
}

const sumsPerKind = 6;

/** Sums over the pixels of every kind, as found before anything is merged. */
export class KindTones {
  readonly #sums = new Float64Array(kindsAtMost * sumsPerKind);

  /** lo and hi: the tone range's, L*. */
  constructor(kinds: Uint8Array, { lightness, a, b }: LabPlanes, lo: number, hi: number) {
    // Neighbours mostly share their kind: a run is summed up before it is put away.
    let run = kinds[0] ?? 0;
    let start = 0;
    let [l, u, v, clamped, floored] = [0, 0, 0, 0, 0];
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i] as number;
      if (kind !== run) {
        this.#add(run, i - start, l, u, v, clamped, floored);
        run = kind;
        start = i;
        l = u = v = clamped = floored = 0;
      }
      const own = lightness[i] as number;
      const above = Math.max(own, lo);
      l += own;
      u += a[i] as number;
      v += b[i] as number;
      clamped += Math.min(above, hi);
      floored += above;
    }
    this.#add(run, kinds.length - start, l, u, v, clamped, floored);
  }

  #add(
    kind: number,
    pixels: number,
    l: number,
    u: number,
    v: number,
    clamped: number,
    floored: number,
  ): void {
    const sums = this.#sums;
    const at = kind * sumsPerKind;
    sums[at] = (sums[at] as number) + pixels;
    sums[at + 1] = (sums[at + 1] as number) + l;
    sums[at + 2] = (sums[at + 2] as number) + u;
    sums[at + 3] = (sums[at + 3] as number) + v;
    sums[at + 4] = (sums[at + 4] as number) + clamped;
    sums[at + 5] = (sums[at + 5] as number) + floored;
  }

  /** Means over all pixels of the kinds that `counts` picks; null where there are none. */
  meanOf(counts: (kind: number) => boolean): MeanTones | null {
    const total = new Float64Array(sumsPerKind);
    for (let kind = 0; kind < kindsAtMost; kind++) {
      if (!counts(kind)) continue;
      for (let i = 0; i < sumsPerKind; i++) {
        total[i] = (total[i] as number) + (this.#sums[kind * sumsPerKind + i] as number);
      }
    }
    const pixels = total[0] as number;
    if (pixels === 0) return null;
    const mean = (i: number): number => (total[i] as number) / pixels;
    return {
      pixels,
      lab: [Math.min(100, Math.max(0, mean(1))), mean(2), mean(3)],
      tones: { clamped: mean(4), floored: mean(5) },
    };
  }
}
