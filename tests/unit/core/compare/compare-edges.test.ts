import { expect, test } from 'vitest';
import { compareEdges } from '../../../../app/core/compare/compare-edges.ts';
import type { MeasuredSheet } from '../../../../app/core/compare/measured-sheet.ts';
import type { Edge } from '../../../../app/core/reading/edges/edge.ts';

// Edges drawn by the tests' own means: ramps of lightness over so many mm on a sheet of 200 x 150 mm; limits are own.
const size = { width: 400, height: 300 };
const sheet = { widthMm: 200, heightMm: 150 };
const upright: Edge = {
  ...{ a: 0, b: 1, kind: 'soft', lengthMm: 140, widthShare: 0.03 },
  path: Array.from({ length: 29 }, (_, n) => [0.5, 0.03 + (0.94 * n) / 28] as const),
} as unknown as Edge;

/** Lightness with a ramp so many mm wide down the middle, its course wavering by a mm as a hand's does. */
const ramp = (mm: number, waver = 0): Float32Array =>
  Float32Array.from({ length: size.width * size.height }, (_, i) => {
    const [x, y] = [((i % size.width) + 0.5) / 2, Math.floor(i / size.width) / 2];
    const across = (x - 100 + waver * Math.sin(y / 9)) / Math.max(0.3, mm) + 0.5;
    return 40 + 40 * Math.min(1, Math.max(0, across));
  });
const measuredAs = (lightness: Float32Array): MeasuredSheet => ({
  lightness,
  a: new Float32Array(lightness.length),
  b: new Float32Array(lightness.length),
  states: new Uint8Array(lightness.length),
});
const judged = (drawn: number, came: number, kind: 'soft' | 'hard' = 'soft') =>
  compareEdges(
    [{ ...upright, kind }],
    ramp(drawn),
    ramp(0),
    measuredAs(ramp(came, 0.5)),
    size,
    sheet,
    async () => {},
  );

test('a soft edge painted hard is harder, and one painted soft is as decided', async () => {
  expect(await judged(6, 0.4)).toMatchObject([{ edge: 0, decided: 'soft', came: 'harder' }]);
  expect(await judged(6, 6)).toEqual([]);
});

test('one that has run half as far as drawn is soft all the same', async () => {
  expect(await judged(6, 3)).toEqual([]);
});

test('a hard edge that has run is softer', async () => {
  expect(await judged(0.5, 5, 'hard')).toMatchObject([{ came: 'softer' }]);
  expect(await judged(0.5, 0.6, 'hard')).toEqual([]);
});
