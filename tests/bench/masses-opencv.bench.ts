import type { Bench, BenchSetting } from './bench.ts';
import { openCvMasses } from './open-cv-steps.ts';
import { ourBandMap, ourBands, ourLightness, ourMasses, ourSmoothing } from './our-steps.ts';

export const needsOpenCv = true;
const k = 5;
const leastPx = 400;

export function bench({ photo, openCv }: BenchSetting): Bench {
  const smooth = ourSmoothing(ourLightness(photo), photo);
  const map = ourBandMap(smooth, ourBands(smooth, k).limits).map((band) => k - band);
  const ours = () => ourMasses(map.slice(), photo, leastPx);
  const name = 'masses against opencv-js';
  const work = `connected shapes of ${k} bands, ${photo.width} x ${photo.height} px, those below ${leastPx} px merged into the neighbour nearest in value until none is left`;
  const own = { name: 'shapes by runs, merged smallest first', run: ours };
  if (!openCv) return { name, work, ours: own, agreement: 'not compared' };
  const peer = () => {
    const bands = new openCv.Mat(photo.height, photo.width, openCv.CV_8U);
    bands.data.set(map);
    openCvMasses(openCv, bands, k, leastPx);
    const merged = bands.data.slice();
    bands.delete();
    return merged;
  };
  const [a, b] = [ours(), peer()];
  const same = a.reduce((sum, band, i) => sum + (band === b[i] ? 1 : 0), 0) / a.length;
  return {
    name,
    work,
    ours: own,
    peer: { name: 'connectedComponentsWithStats a band + merging', run: peer },
    aim: 4,
    agreement: `${(100 * same).toFixed(1)} % of pixels in the same band`,
  };
}
