import { expect, test } from 'vitest';
import {
  applySquint,
  type Pixels,
  reducedLight,
  squintOf,
} from '../../../../app/core/raster/squint.ts';

function grey(width: number, height: number, code: (x: number, y: number) => number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      data.fill(code(x, y), (y * width + x) * 4, (y * width + x) * 4 + 3);
  return { data, width, height };
}

test('a flat picture stays flat, at any strength', () => {
  const light = reducedLight(grey(300, 200, () => 140));
  for (const strength of [0, 0.5, 1]) {
    const out = applySquint(light, squintOf(strength), false);
    expect(out.every((code, i) => (i % 4 === 3 ? code === 255 : Math.abs(code - 140) <= 1))).toBe(
      true,
    );
  }
});

test('a fine check squints to one grey of its mean light, L* 76', () => {
  const light = reducedLight(grey(1600, 1200, (x, y) => ((x + y) % 2 ? 255 : 0)));
  expect(Math.max(light.width, light.height)).toBeLessThanOrEqual(320);
  const out = applySquint(light, squintOf(0), true);
  const middle = ((light.height >> 1) * light.width + (light.width >> 1)) * 4;
  expect(Math.abs((out[middle] ?? 0) - 188)).toBeLessThanOrEqual(2); // 188 is code of half the light
});

test('the stronger, the softer the step and the nearer black and white come', () => {
  const light = reducedLight(grey(320, 40, (x) => (x < 160 ? 0 : 255)));
  const rowOf = (strength: number): number[] => {
    const out = applySquint(light, squintOf(strength), true);
    return Array.from({ length: 320 }, (_, x) => out[(20 * 320 + x) * 4] ?? 0);
  };
  const inBetween = (row: number[]): number =>
    row.filter((code) => code > (row[0] ?? 0) + 3 && code < (row[319] ?? 0) - 3).length;
  const [open, half, shut] = [rowOf(0), rowOf(0.5), rowOf(1)] as [number[], number[], number[]];
  expect(inBetween(half)).toBeGreaterThan(inBetween(open));
  expect(inBetween(shut)).toBeGreaterThan(inBetween(half));
  const span = (row: number[]): number => (row[319] ?? 0) - (row[0] ?? 0);
  expect(span(shut)).toBeLessThan(span(open));
  for (const row of [open, half, shut]) {
    const rises = row.every((code, x) => code >= (row[x - 1] ?? 0)); // no ringing
    expect(rises).toBe(true);
  }
});

test('grey has no hue; colour keeps its own', () => {
  const { data, width, height } = grey(50, 50, () => 128);
  for (let p = 0; p < data.length; p += 4) data[p] = 230;
  const light = reducedLight({ data, width, height });
  const [r, g, b] = applySquint(light, squintOf(0.5), true);
  expect([r, g]).toEqual([g, b]);
  const colour = applySquint(light, squintOf(0.5), false);
  expect(colour[0]).toBeGreaterThan((colour[1] ?? 0) + 80);
});

test('one pixel, and a picture a single row high', () => {
  for (const [w, h] of [
    [1, 1],
    [700, 1],
  ] as const) {
    const light = reducedLight(grey(w, h, () => 90));
    expect(Math.abs((applySquint(light, squintOf(1), true)[0] ?? 0) - 90)).toBeLessThanOrEqual(1);
  }
});
