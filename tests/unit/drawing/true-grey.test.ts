import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { expect, test } from 'vitest';
import { makeGrey } from '../../../app/drawing/true-grey.ts';

addMode(modeLab65);
addMode(modeRgb);
const toLab = converter('lab65');
const labOf = (r = 0, g = 0, b = 0) => toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });

test('greys stay what they are', () => {
  const greys = Uint8ClampedArray.from({ length: 1024 }, (_, i) => (i % 4 === 3 ? 255 : i >> 2));
  const before = [...greys];
  makeGrey(greys);
  greys.forEach((code, i) => {
    expect(Math.abs(code - (before[i] ?? 0))).toBeLessThanOrEqual(1);
  });
});

test('a colour keeps its L* within half a code, and is neutral', () => {
  const colours = [255, 0, 0, 255, 0, 0, 255, 255, 255, 255, 0, 255, 60, 90, 200, 128];
  const rgba = Uint8ClampedArray.from(colours);
  makeGrey(rgba);
  for (let p = 0; p < rgba.length; p += 4) {
    expect(rgba[p + 1]).toBe(rgba[p]);
    expect(rgba[p + 2]).toBe(rgba[p]);
    expect(rgba[p + 3]).toBe(colours[p + 3]);
    const wanted = labOf(colours[p], colours[p + 1], colours[p + 2]).l;
    expect(Math.abs(labOf(rgba[p], rgba[p], rgba[p]).l - wanted)).toBeLessThan(0.4);
  }
});
