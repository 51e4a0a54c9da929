import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** A picture of one size out of a pile of ever smaller ones. */
export interface FillLevel extends PixelSize {
  /** 1 where the colour is known; the rest is filled. */
  readonly known: Uint8Array;
  readonly planes: readonly Float32Array[];
}

/** Half the size: means of what is known; a cell is known if any of its four is. */
export function coarserLevel({ width, height, known, planes }: FillLevel): FillLevel {
  const half: PixelSize = { width: (width + 1) >> 1, height: (height + 1) >> 1 };
  const count = new Uint8Array(half.width * half.height);
  const sums = planes.map(() => new Float32Array(count.length));
  for (let y = 0, i = 0; y < height; y++) {
    const row = (y >> 1) * half.width;
    for (let x = 0; x < width; x++, i++) {
      if (known[i] === 0) continue;
      const to = row + (x >> 1);
      count[to] = (count[to] as number) + 1;
      for (let p = 0; p < planes.length; p++) {
        const sum = sums[p] as Float32Array;
        sum[to] = (sum[to] as number) + ((planes[p] as Float32Array)[i] as number);
      }
    }
  }
  for (const sum of sums) {
    for (let i = 0; i < sum.length; i++) {
      if ((count[i] as number) > 1) sum[i] = (sum[i] as number) / (count[i] as number);
    }
  }
  for (let i = 0; i < count.length; i++) count[i] = Math.min(1, count[i] as number);
  return { ...half, known: count, planes: sums };
}

/** Fills what is not known from the next smaller picture, between the middles of its cells. */
export function fillFromCoarser(fine: FillLevel, coarse: FillLevel): void {
  const { width, height, known } = fine;
  fine.planes.forEach((plane, p) => {
    const from = coarse.planes[p] as Float32Array;
    for (let y = 0, i = 0; y < height; y++) {
      const near = (y >> 1) * coarse.width;
      const beside = (y >> 1) + (y & 1 ? 1 : -1);
      const far = beside >= 0 && beside < coarse.height ? beside * coarse.width : near;
      for (let x = 0; x < width; x++, i++) {
        if (known[i] === 1) continue;
        const column = x >> 1;
        const next = column + (x & 1 ? 1 : -1);
        const side = next >= 0 && next < coarse.width ? next : column;
        plane[i] =
          (9 * (from[near + column] as number) +
            3 * (from[near + side] as number) +
            3 * (from[far + column] as number) +
            (from[far + side] as number)) /
          16;
      }
    }
  });
}
