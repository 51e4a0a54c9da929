import type { Bench, BenchSetting } from './bench.ts';
import { openCvBands, openCvGradient, openCvLightness, openCvMasses } from './open-cv-steps.ts';
import { ourChain } from './our-steps.ts';

export const needsOpenCv = true;
const k = 5;
const leastPx = 400;

export function bench({ photo, openCv }: BenchSetting): Bench {
  const ours = () => ourChain(photo, k, leastPx);
  const name = 'whole chain against opencv-js';
  const work = `lightness, smoothing, ${k} bands, masses of at least ${leastPx} px, gradient; ${photo.width} x ${photo.height} px`;
  const own = { name: 'our kernels', run: ours };
  if (!openCv) return { name, work, ours: own, agreement: 'not compared' };
  const peer = () => {
    const lightness = openCvLightness(openCv, photo);
    const smooth = new openCv.Mat();
    openCv.bilateralFilter(lightness, smooth, 9, 30, 7, openCv.BORDER_DEFAULT);
    const { bands } = openCvBands(openCv, smooth, k);
    openCvMasses(openCv, bands, k, leastPx);
    const slopes = openCvGradient(openCv, lightness);
    const result = { bands: bands.data.slice(), slopes: slopes.data32F.slice() };
    for (const mat of [lightness, smooth, bands, slopes]) mat.delete();
    return result;
  };
  const [a, b] = [ours(), peer()];
  const same = a.bands.reduce((sum, band, i) => sum + (k - band === b.bands[i] ? 1 : 0), 0);
  return {
    name,
    work,
    ours: own,
    peer: { name: 'bilateral 9/30/7, k-means, components, derivative', run: peer },
    aim: 5,
    agreement: `${((100 * same) / a.bands.length).toFixed(1)} % of pixels in the same band (the smoothings differ)`,
  };
}
