import type { Bench, BenchSetting } from './bench.ts';
import { mostApart } from './most-apart.ts';
import { openCvLightness } from './open-cv-steps.ts';
import { ourLightness } from './our-steps.ts';

export const needsOpenCv = true;

export function bench({ photo, openCv }: BenchSetting): Bench {
  const plane = new Float32Array(photo.width * photo.height);
  const ours = () => ourLightness(photo, plane);
  const name = 'lightness against opencv-js';
  const work = `sRGB bytes to L*, ${photo.width} x ${photo.height} px; the library computes a* and b* on the way`;
  const own = { name: 'tables by channel, cube root by table', run: ours };
  if (!openCv) return { name, work, ours: own, agreement: 'not compared' };
  const peer = () => {
    const mat = openCvLightness(openCv, photo);
    const plane = mat.data32F.slice();
    mat.delete();
    return plane;
  };
  return {
    name,
    work,
    ours: own,
    peer: { name: 'cvtColor of floats', run: peer },
    aim: 3,
    agreement: `at most ${mostApart(ours(), peer()).toFixed(4)} L* apart`,
  };
}
