import { converter } from 'culori';
import { expect, test } from 'vitest';
import { lightnessOfRgba } from '../../../../app/core/colour/lightness-of-rgba.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const toLab = converter('lab65');

test('all greys and 20,000 seeded colours are within 0.015 L* of culori lab65', () => {
  const random = seeded(3);
  const count = 20_259; // no whole number of runs nor of turns
  const bytes = new Uint8Array(4 * count + 1);
  const rgba = bytes.subarray(1); // a view that begins between two words
  for (let i = 0; i < count; i++) {
    const code = (): number => (i < 256 ? i : Math.floor(256 * random()));
    rgba.set([code(), code(), code(), 255], 4 * i);
  }
  const plane = new Float32Array(count);
  lightnessOfRgba(rgba, plane);
  let worst = 0;
  for (let i = 0; i < count; i++) {
    const [r = 0, g = 0, b = 0] = rgba.subarray(4 * i, 4 * i + 3);
    const { l } = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
    worst = Math.max(worst, Math.abs(l - (plane[i] as number)));
  }
  expect(worst).toBeLessThan(0.015);
  expect([plane[0], plane[255]]).toEqual([0, 100]);
});

test('bytes that are no pixels are refused', () => {
  expect(() => lightnessOfRgba(new Uint8Array(7), new Float32Array(2))).toThrow(RangeError);
});
