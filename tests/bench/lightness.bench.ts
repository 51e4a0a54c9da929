import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { lightnessPlane } from '../../workers/kernels/pixels/lightness.ts';
import { reducePicture } from '../../workers/kernels/pixels/raster-reducer.ts';
import type { Bench } from './bench.ts';
import { seededPicture } from './seeded-picture.ts';

addMode(modeRgb);
addMode(modeLab65);
const toLab = converter('lab65');

/** RGBA codes to L*, pixel by pixel, as one would with a colour library. */
export function lightnessByLibrary(rgba: Uint8ClampedArray): Float32Array {
  const plane = new Float32Array(rgba.length / 4);
  for (let i = 0, at = 0; i < plane.length; i++, at += 4) {
    const [r = 0, g = 0, b = 0] = [rgba[at], rgba[at + 1], rgba[at + 2]];
    plane[i] = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 }).l;
  }
  return plane;
}

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
