import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { expect, test } from 'vitest';
import { labToRgb, tableOf } from '../../../../app/core/colour/lab.ts';
import { paintSlots } from '../../../../app/core/raster/paint-slots.ts';

addMode(modeLab65);
addMode(modeRgb);
const toLab = converter('lab65');

test('every grey and 20,000 seeded colours come back from culori lab65 to their own bytes', () => {
  let seed = 7;
  const next = (): number => {
    seed = (seed * 1664525 + 1013904223) >>> 0;
    return seed >>> 24;
  };
  const colours = Array.from({ length: 256 }, (_, i) => [i, i, i]);
  for (let i = 0; i < 20000; i++) colours.push([next(), next(), next()]);
  for (const [r = 0, g = 0, b = 0] of colours) {
    const lab = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
    expect(labToRgb([lab.l, lab.a, lab.b])).toEqual([r, g, b]);
  }
});

test('colours no screen shows are clipped, not wrapped', () => {
  const [red, green, blue] = labToRgb([50, 100, -100]);
  expect([red > 100, green, blue]).toEqual([true, 0, 255]);
  expect(labToRgb([120, 0, 0])).toEqual([255, 255, 255]);
  expect(labToRgb([-5, 0, 0])).toEqual([0, 0, 0]);
});

test('a slot map is painted by its table; a slot without a colour is paper', () => {
  const out = new Uint8ClampedArray(12);
  paintSlots(new Uint8Array([1, 0, 7]), new Uint8ClampedArray([10, 20, 30, 40, 50, 60]), out);
  expect([...out]).toEqual([40, 50, 60, 255, 10, 20, 30, 255, 255, 255, 255, 255]);
  expect(tableOf([[100, 0, 0]])).toEqual(new Uint8ClampedArray([255, 255, 255]));
});
