import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import type { ShapeVerdict } from '../../../../app/core/compare/comparison.ts';
import {
  driftOf,
  judgeBands,
  judgeShapes,
  judgeWhites,
  judgeWhole,
} from '../../../../app/core/compare/judge.ts';
import type { MeasuredSheet } from '../../../../app/core/compare/measured-sheet.ts';
import { pixelStates } from '../../../../app/core/compare/measured-sheet.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';

// Limits (own): a drift counts from 6 in a*, b* on, lightness is off from 4 L* on and clearly from 8; a white is within
// 5 L* of the paper and less than 8 of it in a*, b*. What is measured is made in the test.

/** A colour off another by so much in a*, b*, towards a hue in degrees. */
const off = ([l, a, b]: Lab, by: number, hue: number): Lab => {
  const angle = (hue * Math.PI) / 180;
  return [l, a + by * Math.cos(angle), b + by * Math.sin(angle)];
};

test('a colour has drifted from 6 in a*, b* on, in lightness alone it has not', () => {
  const grey: Lab = [50, 0, 0];
  expect(driftOf(grey, [50, 0, 5.99])).toEqual([]);
  expect(driftOf(grey, [50, 0, 6])).toEqual(['warmer']);
  expect(driftOf(grey, [50, 6, 0])).toEqual(['warmer']);
  expect(driftOf(grey, [20, 4, 4])).toEqual([]);
  expect(driftOf(grey, [20, 4.3, 4.3])).toEqual(['warmer']);
});

test('warmer is towards orange, cooler away from it; what goes half as far along a way is told', () => {
  const grey: Lab = [50, 0, 0];
  expect(driftOf(grey, off(grey, 10, 60))).toEqual(['warmer']);
  expect(driftOf(grey, off(grey, 10, 240))).toEqual(['cooler']);
  expect(driftOf(grey, off(grey, 10, 150 - 1))).toEqual([]); // across it: a hue of its own
  // Of 10 at so many degrees from orange, 3 and a little more, or less, go towards it.
  const side = (Math.acos(0.3) * 180) / Math.PI;
  expect(driftOf(grey, off(grey, 10, 60 + side - 0.2))).toEqual(['warmer']);
  expect(driftOf(grey, off(grey, 10, 60 + side + 0.2))).toEqual([]);
});

test('a colour goes cleaner along its own hue and duller back, the farther way told first', () => {
  const blue = off([50, 0, 0], 20, 240); // cleaner is cooler
  expect(driftOf(blue, off(blue, 8, 240)).sort()).toEqual(['cleaner', 'cooler']);
  expect(driftOf(blue, off(blue, 8, 60)).sort()).toEqual(['duller', 'warmer']);
  const green = off([50, 0, 0], 20, 150); // across: warmth does not change
  expect(driftOf(green, off(green, 8, 150))).toEqual(['cleaner']);
  expect(driftOf(green, off(green, 8, 330))).toEqual(['duller']);
  expect(driftOf(green, off(green, 10, 150 - 50))).toEqual(['warmer', 'cleaner']);
  expect(driftOf(green, off(green, 10, 150 - 40))).toEqual(['cleaner', 'warmer']);
});

const slots = [
  { band: 1, family: 0, passage: 'ground', reserve: true },
  { band: 3, family: 2, passage: 'subject', reserve: false },
] as unknown as WashPlan['slots'];

const row = (slot: number, expected: Lab, measured: Lab, more: Partial<ShapeVerdict> = {}) => ({
  ...{ slot, shapes: [slot], share: 0.4, measuredShare: 0.3, at: [0.2, 0.7] as const },
  ...{ expected, measured, ...more },
});

test('a shape is judged under the band, family and passage of its slot, one of no slot not at all', () => {
  const rows = [row(1, [60, 0, 0], [52, 0, 8]), row(7, [60, 0, 0], [52, 0, 8])];
  expect(judgeShapes(rows, { slots })).toEqual([
    {
      ...rows[0],
      ...{ band: 3, family: 2, passage: 'subject', difference: -8 },
      ...{ verdict: 'clearly darker', drift: ['warmer'] },
    },
  ]);
});

const verdict = (band: number, measuredShare: number, expected: number, measured: number) => ({
  ...row(1, [expected, 0, 0], [measured, 0, 0], { band, measuredShare }),
  ...{ band, family: 0, passage: 'ground', difference: measured - expected },
  ...{ verdict: 'same' as const, drift: [] },
});

test('a band is judged by what was measured of it, each shape by its area; bands in order', () => {
  const bands = judgeBands([
    verdict(3, 0.1, 30, 40),
    verdict(1, 0.3, 80, 84),
    verdict(1, 0.1, 90, 70),
  ]);
  expect(bands.map(({ band, verdict }) => [band, verdict])).toEqual([
    [1, 'same'],
    [3, 'clearly lighter'],
  ]);
  const [light] = bands;
  expect(light?.share).toBeCloseTo(0.4, 12);
  expect(light?.expected).toBeCloseTo((0.3 * 80 + 0.1 * 90) / 0.4, 9);
  expect(light?.measured).toBeCloseTo((0.3 * 84 + 0.1 * 70) / 0.4, 9);
  expect(light?.difference).toBeCloseTo((0.3 * 4 - 0.1 * 20) / 0.4, 9);
});

test('a white is kept where it is within 9 L* of the paper and less than 8 from it in a*, b*', () => {
  const paper: Lab = [96, 1, 2];
  const kept = (measured: Lab, slot = 0): boolean | undefined =>
    judgeWhites([{ ...verdict(1, 0.3, 96, 0), slot, measured }], { slots, paper }, sheet)[0]?.kept;
  const sheet = { widthMm: 300, heightMm: 200 };
  expect([kept([87.1, 1, 2]), kept([87, 1, 2])]).toEqual([true, false]);
  expect([kept([96, 8.9, 2]), kept([96, 9, 2])]).toEqual([true, false]);
  expect([kept([96, 1, -5.9]), kept([96, 1, -6])]).toEqual([true, false]);
  expect([kept([96, 6, 7]), kept([96, 7, 8])]).toEqual([true, false]);
  expect([kept([96, 1, 2], 1), kept([96, 1, 2], 5)]).toEqual([undefined, undefined]);
  const [white] = judgeWhites([{ ...verdict(1, 0.3, 96, 0), slot: 0 }], { slots, paper }, sheet);
  expect(white).toMatchObject({ slot: 0, at: [0.2, 0.7] });
  expect(white?.areaMm2).toBeCloseTo(0.4 * 60_000, 9);
});

const size = { width: 120, height: 80 };
const sheet = { widthMm: 120, heightMm: 80 }; // 1 px is 1 mm

/** Planes of a sheet by its lightness at every place. */
function planes(lightness: (x: number, y: number) => number): MeasuredSheet {
  const plane = new Float32Array(size.width * size.height);
  for (let i = 0; i < plane.length; i++)
    plane[i] = lightness(i % size.width, Math.floor(i / size.width));
  const flat = new Float32Array(plane.length);
  return { lightness: plane, a: flat, b: flat, states: new Uint8Array(plane.length) };
}

test('of the measured area so much is within 4 and within 8 L*', () => {
  const sky = planes((x) => x);
  const shapes = [
    [3.9, 0.2],
    [-4, 0.1],
    [-7.9, 0.05],
    [8, 0.15],
  ].map(([difference = 0, share = 0]) => ({ ...verdict(1, share, 0, 0), difference }));
  const whole = judgeWhole(shapes, sky, sky, null, size, sheet);
  expect(whole.within4).toBeCloseTo(0.2 / 0.5, 9);
  expect(whole.within8).toBeCloseTo(0.35 / 0.5, 9);
  const none = judgeWhole([], sky, sky, null, size, sheet);
  expect([none.within4, none.within8]).toEqual([0, 0]);
  expect([none.likeReference, none.expectedLikeReference]).toEqual([null, null]);
});

test('light and dark are the lightest and darkest twentieth of what counts', () => {
  const ramp = planes((x) => 10 + x / 2);
  const measured = planes((x) => 90 - x / 2);
  const { expectedRange, measuredRange } = judgeWhole([], ramp, measured, null, size, sheet);
  expect(expectedRange[0]).toBeCloseTo(10 + 0.95 * 59.5, 0);
  expect(expectedRange[1]).toBeCloseTo(10 + 0.05 * 59.5, 0);
  expect(measuredRange[0]).toBeCloseTo(90 - 0.05 * 59.5, 0);
  // What does not count is left out: of the left half only.
  measured.states.forEach((_, i) => {
    if (i % size.width < 60) measured.states[i] = i % 2 ? pixelStates.glare : pixelStates.missing;
  });
  const half = judgeWhole([], ramp, measured, null, size, sheet);
  expect(half.measuredRange[0]).toBeCloseTo(60 - 0.05 * 29.5, 0);
  expect(half.expectedRange[1]).toBeCloseTo(40 + 0.05 * 29.5, 0);
});

test('squinted at, a sheet is like the reference where only what is finer than 6 mm differs', () => {
  const wide = (x: number, y: number): number => 50 + 30 * Math.sin(x / 20) * Math.cos(y / 20);
  const reference = planes(wide).lightness;
  const grainy = planes((x, y) => wide(x, y) + ((x + y) % 2 ? 15 : -15));
  const like = (measured: MeasuredSheet, expected = planes(wide)) =>
    judgeWhole([], expected, measured, reference, size, sheet);
  expect(like(grainy).likeReference).toBeGreaterThan(0.999);
  expect(like(grainy).expectedLikeReference).toBeGreaterThan(0.999);
  expect(like(planes((x, y) => 100 - wide(x, y))).likeReference).toBeLessThan(-0.999);
  // A pattern of 12 mm is seen at a tenth of its strength; at two tenths of it a squint would be 4 mm, not 6.
  const striped = planes((x, y) => wide(x, y) + 60 * Math.sin((2 * Math.PI * x) / 24));
  const seen = like(striped).likeReference ?? 0;
  const fallen = Math.exp(-0.5 * ((2 * Math.PI * 6) / 24) ** 2); // of a Gaussian blur, sigma 6 mm
  const [own, other] = [15 ** 2, (60 * fallen) ** 2 / 2];
  expect(seen).toBeCloseTo(Math.sqrt(own / (own + other)), 1);
  const off = planes((x, y) => (x < 60 ? 100 - wide(x, y) : wide(x, y)));
  off.states.forEach((_, i) => {
    if (i % size.width < 75) off.states[i] = pixelStates.missing;
  });
  expect(like(off).likeReference).toBeGreaterThan(0.98); // what is off the photo is not compared
});
