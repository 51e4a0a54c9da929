import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import { type Bench, type BenchSetting, notCompared, type PhotoBytes } from './bench.ts';
import { openCvLightness } from './open-cv-steps.ts';
import { rasterOf } from './read-bytes.ts';

export const needsOpenCv = true;

addMode(modeRgb);
addMode(modeLab65);
const toLab = converter('lab65');

/** L* of every pixel, one by one, as one would with a colour library. */
function lightnessByCulori({ rgba }: PhotoBytes): Float32Array {
  const plane = new Float32Array(rgba.length / 4);
  for (let i = 0, from = 0; i < plane.length; i++, from += 4) {
    const [r = 0, g = 0, b = 0] = [rgba[from], rgba[from + 1], rgba[from + 2]];
    plane[i] = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 }).l;
  }
  return plane;
}

function mostApart(one: Float32Array, other: Float32Array): string {
  let most = 0;
  for (let i = 0; i < one.length; i++) {
    most = Math.max(most, Math.abs((one[i] as number) - (other[i] as number)));
  }
  return `at most ${most.toFixed(4)} L* apart`;
}

export function benches({ photo, openCv }: BenchSetting): Bench[] {
  const ours = () => lightnessPlane(rasterOf(photo).raster);
  const own = {
    work: `sRGB bytes to L*, ${photo.width} x ${photo.height} px; ours keeps the planes of linear light, the library computes a* and b*`,
    ours: { name: "the reading's raster, then its lightness plane", run: ours },
  };
  const byCulori = () => lightnessByCulori(photo);
  const againstCulori: Bench = {
    name: 'lightness against culori',
    ...own,
    peer: { name: 'lab65 a pixel', run: byCulori },
    aim: 100,
    agreement: mostApart(ours(), byCulori()),
  };
  const bare = { name: 'lightness against opencv-js', ...own };
  if (!openCv) return [againstCulori, { ...bare, agreement: notCompared }];
  const byOpenCv = () => {
    const mat = openCvLightness(openCv, photo);
    const plane = mat.data32F.slice();
    mat.delete();
    return plane;
  };
  const againstOpenCv: Bench = {
    ...bare,
    peer: { name: 'cvtColor of floats', run: byOpenCv },
    aim: 3,
    agreement: mostApart(ours(), byOpenCv()),
  };
  return [againstCulori, againstOpenCv];
}
