import { lightnessPlane } from '../../workers/kernels/pixels/lightness.ts';
import { reducePicture } from '../../workers/kernels/pixels/raster-reducer.ts';
import type { Bench } from './bench.ts';
import { lightnessByLibrary } from './lightness-by-library.ts';
import { seededPicture } from './seeded-picture.ts';

export function bench(): Bench {
  const picture = seededPicture(1024, 768, 1);
  const ours = () => lightnessPlane(reducePicture(picture.rgba, picture, picture).raster);
  const peer = () => lightnessByLibrary(picture.rgba);
  const [a, b] = [ours(), peer()];
  const apart = a.reduce((most, value, i) => Math.max(most, Math.abs(value - (b[i] ?? 0))), 0);
  return {
    name: 'lightness',
    work: 'sRGB bytes to L*, 1024 x 768 px; the library computes a* and b* on the way',
    ours: { name: 'raster + lightness plane', run: ours },
    peer: { name: 'culori lab65 a pixel', run: peer },
    agreement: `at most ${apart.toFixed(4)} L* apart`,
  };
}
