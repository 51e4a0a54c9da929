import { seededRandom } from './seeded-random.ts';

export interface SeededPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray;
}

/** Soft shapes of colour with grain, the same for the same seed: no flat areas a cache could favour. */
export function seededPicture(width: number, height: number, seed: number): SeededPicture {
  const random = seededRandom(seed);
  const waves = Array.from({ length: 9 }, () => ({
    across: random() * 12,
    down: random() * 12,
    shift: random() * 2 * Math.PI,
  }));
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (let y = 0, to = 0; y < height; y++) {
    for (let x = 0; x < width; x++, to += 4) {
      for (let channel = 0; channel < 3; channel++) {
        let sum = 0;
        for (const { across, down, shift } of waves.slice(channel * 3, channel * 3 + 3))
          sum += Math.sin((across * x) / width + (down * y) / height + shift);
        rgba[to + channel] = 128 + 40 * sum + 24 * (random() - 0.5);
      }
      rgba[to + 3] = 255;
    }
  }
  return { width, height, rgba };
}
