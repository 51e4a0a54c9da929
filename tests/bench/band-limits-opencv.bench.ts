import type { Bench, BenchSetting } from './bench.ts';
import { openCvBands } from './open-cv-steps.ts';
import { ourBands, ourLightness } from './our-steps.ts';

export const needsOpenCv = true;
const k = 5;

export function bench({ photo, openCv }: BenchSetting): Bench {
  const lightness = ourLightness(photo);
  const ours = () => ourBands(lightness, k);
  const name = 'band limits against opencv-js';
  const work = `${k} bands of ${photo.width} x ${photo.height} lightnesses; ours is exact over 256 steps, k-means takes the best of three starts of at most ten rounds`;
  const own = { name: 'histogram + dynamic programming', run: ours };
  if (!openCv) return { name, work, ours: own, agreement: 'not compared' };
  const mat = new openCv.Mat(photo.height, photo.width, openCv.CV_32F);
  mat.data32F.set(lightness);
  const peer = () => {
    const { bands, cost } = openCvBands(openCv, mat, k);
    bands.delete();
    return cost;
  };
  // Ours counts in steps of 1 / 2.55 L*.
  const ratio = ours().cost / 2.55 ** 2 / peer();
  return {
    name,
    work,
    ours: own,
    peer: { name: 'kmeans', run: peer },
    aim: 100,
    agreement: `our cost is ${ratio.toFixed(4)} of the library's`,
  };
}
