import type { Bench, BenchSetting } from './bench.ts';
import { lightnessByLibrary } from './lightness-by-library.ts';
import { mostApart } from './most-apart.ts';
import { ourLightness } from './our-steps.ts';

export function bench({ photo }: BenchSetting): Bench {
  const plane = new Float32Array(photo.width * photo.height);
  const ours = () => ourLightness(photo, plane);
  const peer = () => lightnessByLibrary(photo.rgba);
  return {
    name: 'lightness',
    work: `sRGB bytes to L*, ${photo.width} x ${photo.height} px; the library computes a* and b* on the way`,
    ours: { name: 'tables by channel, cube root by table', run: ours },
    peer: { name: 'culori lab65 a pixel', run: peer },
    aim: 100,
    agreement: `at most ${mostApart(ours(), peer()).toFixed(4)} L* apart`,
  };
}
