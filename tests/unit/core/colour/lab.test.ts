import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { expect, test } from 'vitest';
import {
  cssColour,
  cssGrey,
  type Lab,
  labOfLinear,
  linearOfLab,
  rgbOfLab,
  writeLabOfXyz,
  xyzOfLab,
} from '../../../../app/core/colour/lab.ts';
import { decodeSrgb } from '../../../../app/core/colour/srgb.ts';
import { seeded } from '../../../support/reading/seeded.ts';

addMode(modeLab65);
addMode(modeRgb);
const toLab = converter('lab65');

test('colours of linear light are those of culori lab65', () => {
  for (let i = 0; i < 512; i++) {
    const [r, g, b] = [(i * 73) % 256, (i * 151) % 256, (i * 29) % 256].map(
      (code) => code / 255,
    ) as [number, number, number];
    const [l, a, blue] = labOfLinear(decodeSrgb(r), decodeSrgb(g), decodeSrgb(b));
    const theirs = toLab({ mode: 'rgb', r, g, b });
    expect(Math.hypot(l - theirs.l, a - theirs.a, blue - theirs.b)).toBeLessThan(1e-3);
  }
});

test('linear light comes back from its colour, dark as bright', () => {
  const random = seeded(5);
  for (let i = 0; i < 2000; i++) {
    const light = [random() ** 4, random() ** 4, random() ** 4] as const;
    const back = linearOfLab(labOfLinear(...light));
    for (const [c, one] of light.entries()) expect(back[c]).toBeCloseTo(one, 9);
  }
});

test('X, Y, Z come back from their colour, and white is L* 100 without colour', () => {
  const lab = new Float64Array(4);
  writeLabOfXyz(1, 1, 1, lab, 1);
  expect([...lab]).toEqual([0, 100, 0, 0]);
  for (const y of [0, 1e-5, 0.0088, 0.0089, 0.2, 0.9]) {
    writeLabOfXyz(0.9 * y, y, 1.1 * y, lab, 0);
    const xyz = xyzOfLab([lab[0], lab[1], lab[2]] as unknown as Lab);
    for (const [i, times] of [0.9, 1, 1.1].entries()) expect(xyz[i]).toBeCloseTo(times * y, 14);
  }
});

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
    expect(rgbOfLab([lab.l, lab.a, lab.b])).toEqual([r, g, b]);
  }
});

test('colours no screen shows are clipped, not wrapped', () => {
  const [red, green, blue] = rgbOfLab([50, 100, -100]);
  expect([red > 100, green, blue]).toEqual([true, 0, 255]);
  expect(rgbOfLab([120, 0, 0])).toEqual([255, 255, 255]);
  expect(rgbOfLab([-5, 0, 0])).toEqual([0, 0, 0]);
});

test('colours of the page are whole codes', () => {
  expect(cssColour([100, 0, 0])).toBe('rgb(255 255 255)');
  expect(cssGrey(50)).toBe('rgb(119 119 119)'); // culori 4.0.2: 118.9
});
