import { lightOfCode } from './linear-light.ts';
import type { Pixels } from './mean-colour.ts';

/** Linear light 0..1 in three planes, row by row. */
export interface LightPlanes {
  readonly width: number;
  readonly height: number;
  readonly planes: readonly [Float32Array, Float32Array, Float32Array];
}

/** Long side at which a picture is squinted at, px: plenty for what is blurred anyway. */
const squintLongSidePx = 320;

/** A picture reduced by whole blocks, averaged in linear light. */
export function reducedLight({ data, width, height }: Pixels): LightPlanes {
  const block = Math.max(1, Math.ceil(Math.max(width, height) / squintLongSidePx));
  const across = Math.ceil(width / block);
  const down = Math.ceil(height / block);
  const planes = [0, 1, 2].map(() => new Float32Array(across * down));
  const [red, green, blue] = planes as [Float32Array, Float32Array, Float32Array];
  const counts = new Uint32Array(across * down);
  for (let y = 0, p = 0; y < height; y++) {
    const row = Math.floor(y / block) * across;
    for (let x = 0; x < width; x++, p += 4) {
      const i = row + Math.floor(x / block);
      counts[i] = (counts[i] as number) + 1;
      red[i] = (red[i] as number) + (lightOfCode[data[p] as number] as number);
      green[i] = (green[i] as number) + (lightOfCode[data[p + 1] as number] as number);
      blue[i] = (blue[i] as number) + (lightOfCode[data[p + 2] as number] as number);
    }
  }
  for (const plane of planes)
    for (let i = 0; i < plane.length; i++) plane[i] = (plane[i] as number) / (counts[i] as number);
  return { width: across, height: down, planes: [red, green, blue] };
}
