import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { colourSquares } from '../../../../../app/core/reading/colour-squares.ts';
import { findDetails } from '../../../../../app/core/reading/details/find-details.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';
import { painted } from '../../../../support/reading/rasters.ts';

// 100 x 80 mm at 4 px on a mm: cells of the lines are 2 px, half a mm, wide.
const pxPerMm = 4;
const [width, height] = [400, 320];
type Rgb = readonly [number, number, number];
const mid: Rgb = [150, 150, 150];
const range = toneRange('photographed', 0, 100, 20, 95);

const within = (x: number, y: number, [left, top, wide, high]: readonly number[]): boolean =>
  x >= (left ?? 0) &&
  x < (left ?? 0) + (wide ?? 0) &&
  y >= (top ?? 0) &&
  y < (top ?? 0) + (high ?? 0);

function found(
  colourAt: (x: number, y: number) => Rgb,
  slotAt: (x: number, y: number) => number = () => 0,
  { circle = null, reserve = [] }: { circle?: readonly Point[] | null; reserve?: number[] } = {},
) {
  const { raster } = painted(width, height, colourAt);
  const slotMap = Uint8Array.from({ length: width * height }, (_, i) =>
    slotAt(i % width, Math.floor(i / width)),
  );
  const squares = runToEnd(colourSquares(slotMap, raster, pxPerMm));
  const slots = [0, 1].map((n) => ({ reserve: reserve.includes(n) }) as Slot);
  const input = { raster, slotMap, slots, squares, range, subject: null, proposed: circle };
  return runToEnd(findDetails(input, pxPerMm));
}
const spot = [100, 80, 12, 12]; // 9 mm2
const onSpot = (colour: Rgb) => (x: number, y: number) => (within(x, y, spot) ? colour : mid);

test('a dark spot is a shape where it lies, with its colour, size and squares', () => {
  const { cellPx, shapes } = found(onSpot([60, 60, 60]));
  expect(cellPx).toBe(2);
  expect(shapes).toHaveLength(1);
  const [one] = shapes;
  expect(one?.isLight).toBe(false);
  expect(one?.areaMm2).toBeCloseTo(9, 6);
  expect(one?.at[0]).toBeCloseTo(106 / width, 6);
  expect(one?.at[1]).toBeCloseTo(86 / height, 6);
  expect(one?.lab[0]).toBeCloseTo(25.3, 0); // L* of sRGB 60 (IEC 61966-2-1)
  expect(one?.lines).toEqual(Array.from({ length: 6 }, (_, n) => [40 + n, 50, 56]).flat());
  expect(one?.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
});

test('of a like value a stronger colour counts, a duller one does not', () => {
  const grassy: Rgb = [120, 150, 90];
  const isOf = (ground: Rgb, own: Rgb) =>
    found((x, y) => (within(x, y, spot) ? own : ground)).shapes.length;
  expect(isOf(mid, [215, 110, 120])).toBe(1);
  expect(isOf(grassy, [141, 141, 141])).toBe(0);
});

test('a light is one only where it stands far off, and not on what stays paper', () => {
  const white = found(onSpot([235, 235, 235]));
  expect(white.shapes.map(({ isLight }) => isLight)).toEqual([true]);
  expect(found(onSpot([170, 170, 170])).shapes).toEqual([]);
  expect(found(onSpot([235, 235, 235]), () => 0, { reserve: [0] }).shapes).toEqual([]);
});

test('a blurred border between two shapes is no detail, on neither side', () => {
  const step = (x: number): number => Math.round(150 + 40 * Math.tanh((200 - x) / 3));
  const border = found(
    (x) => [step(x), step(x), step(x)],
    (x) => (x < 200 ? 0 : 1),
  );
  expect(border.shapes).toEqual([]);
});

test('a line of 1 mm is one shape; what is faint or too small is none', () => {
  const line = found((x, y) => (within(x, y, [40, 160, 320, 4]) ? [60, 60, 60] : mid));
  expect(line.shapes.map(({ areaMm2 }) => Math.round(areaMm2))).toEqual([80]);
  expect(found(onSpot([140, 140, 140])).shapes).toEqual([]);
  expect(found((x, y) => (within(x, y, [100, 80, 4, 4]) ? [60, 60, 60] : mid)).shapes).toEqual([]);
});

test('where attention gathers finer and fainter shapes count, and come first', () => {
  const round: Point[] = [0, 1, 2, 3, 4, 5, 6, 7].map((n) => [
    0.25 + 0.05 * Math.cos((n * Math.PI) / 4),
    0.25 + 0.05 * Math.sin((n * Math.PI) / 4),
  ]);
  const small = [98, 76, 6, 8]; // 3 mm2, in the circle
  const far = [340, 280, 12, 12];
  const both = (x: number, y: number): Rgb =>
    within(x, y, small) || within(x, y, far) ? [100, 100, 100] : mid;
  const { shapes } = found(both, () => 0, { circle: round });
  expect(shapes.map(({ near }) => near === 1)).toEqual([true, false]);
  expect(found(both).shapes).toHaveLength(1);
});

test('a net of lines comes apart where it stands out most', () => {
  // Grey bars over most of the sheet, joined by one line; a piece of a bar is darker.
  const net = (x: number, y: number): Rgb => {
    if (within(x, y, [60, 100, 40, 12])) return [40, 40, 40];
    const isBar = x >= 40 && x < 360 && y % 40 < 12 && y >= 60 && y < 260;
    return isBar || within(x, y, [200, 60, 8, 200]) ? [110, 110, 110] : mid;
  };
  const { shapes } = found(net);
  expect(shapes.length).toBeGreaterThanOrEqual(1);
  expect(shapes[0]?.lab[0]).toBeLessThan(25);
  expect(Math.max(...shapes.map(({ areaMm2 }) => areaMm2))).toBeLessThanOrEqual(400);
});

test('a net of dark lines comes apart into its lines, and is not lost but for its darkest spot', () => {
  // Five lines of 80 x 3 mm with a link across, 1242 mm2 in all: too much for one touch, each by itself is not.
  const net = (x: number, y: number): Rgb => {
    if (within(x, y, [60, 120, 40, 12])) return [60, 60, 60];
    const isLine = x >= 40 && x < 360 && y % 40 < 12 && y >= 80 && y < 260;
    return isLine || within(x, y, [200, 80, 8, 172]) ? [90, 90, 90] : mid;
  };
  const { shapes } = found(net);
  expect(Math.max(...shapes.map(({ areaMm2 }) => areaMm2))).toBeLessThanOrEqual(400);
  expect(shapes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)).toBeGreaterThan(800);
});
