import { expect, test } from 'vitest';
import { compareEdges } from '../../../../app/core/compare/compare-edges.ts';
import { type MeasuredSheet, pixelStates } from '../../../../app/core/compare/measured-sheet.ts';
import type { Edge } from '../../../../app/core/reading/edges/edge.ts';

// Edges drawn by the test: ramps of lightness over so many mm, at 2 px a mm. Limits are the project's own: 30 mm long,
// 8 L* of contrast, half to twice as drawn; softer from 1.2 mm and twice as wide on, over 0.7 of its length.
const size = { width: 240, height: 240 };
const sheet = { widthMm: 120, heightMm: 120 };
const count = size.width * size.height;

type Drawn = (xMm: number, yMm: number) => number;
const plane = (drawn: Drawn): Float32Array =>
  Float32Array.from({ length: count }, (_, i) =>
    drawn(((i % size.width) + 0.5) / 2, (Math.floor(i / size.width) + 0.5) / 2),
  );
/** A rise of so much L* over so many mm of the middle, from left to right. */
const ramp =
  (mm: number, contrast = 40): Drawn =>
  (x) =>
    40 + contrast * Math.min(1, Math.max(0, (x - 60) / Math.max(0.3, mm) + 0.5));

const upright = (more: Partial<Edge> = {}): Edge =>
  ({
    ...{ a: 0, b: 1, kind: 'hard', lengthMm: 110, widthShare: 0.03, graded: false },
    path: Array.from({ length: 23 }, (_, n) => [0.5, 0.05 + (0.9 * n) / 22] as const),
    ...more,
  }) as Edge;

const judge = (
  drawn: Drawn,
  came: Drawn,
  { edge = upright(), states = new Uint8Array(count), crisp = ramp(0) } = {},
) => {
  const [a, b] = [new Float32Array(count), new Float32Array(count)];
  const measured: MeasuredSheet = { lightness: plane(came), a, b, states };
  return compareEdges([edge], plane(drawn), plane(crisp), measured, size, sheet, async () => {});
};

test('widths are told in mm, from a fifth of the rise to four fifths, as a blur of deviation 1 is 2 wide', async () => {
  const [found] = await judge(ramp(2), ramp(9));
  expect(found).toMatchObject({ edge: 0, decided: 'hard', came: 'softer', lengthMm: 110 });
  // 0.6 of a straight ramp; a normal curve has its fifths 1.683 deviations apart.
  expect(found?.measuredMm).toBeCloseTo((0.6 * 9 * 2) / 1.683, 0);
  expect(Math.abs((found?.expectedMm ?? 0) - (0.6 * 2 * 2) / 1.683)).toBeLessThan(0.3); // the lens
  expect(found?.contrast).toBeGreaterThan(38);
  expect(found?.contrast).toBeLessThanOrEqual(40.01);
  expect(found?.at).toEqual([expect.closeTo(0.5, 6), expect.closeTo(0.5, 1)]);
});

test('short edges, graded ones, faint ones and those of another contrast are not judged', async () => {
  const soft = ramp(9);
  expect(await judge(ramp(0.5), soft, { edge: upright({ lengthMm: 29 }) })).toEqual([]);
  expect(await judge(ramp(0.5), soft, { edge: upright({ lengthMm: 30 }) })).toHaveLength(1);
  expect(await judge(ramp(0.5), soft, { edge: upright({ graded: true }) })).toEqual([]);
  const faint = async (contrast: number) => {
    const crisp = ramp(0, contrast);
    return (await judge(ramp(0.5, contrast), ramp(5, contrast), { crisp })).length;
  };
  expect([await faint(7.8), await faint(8.3)]).toEqual([0, 1]);
  const painted = async (contrast: number) => (await judge(ramp(0.5), ramp(5, contrast))).length;
  expect([await painted(19), await painted(21.5), await painted(79), await painted(82)]).toEqual([
    ...[0, 1, 1, 0],
  ]);
});

test('it is softer where it is more than twice as wide, and by 1.2 mm, over most of its length', async () => {
  const softer = async (drawn: number, came: Drawn) => (await judge(ramp(drawn), came)).length;
  // Widths grow by 0.713 mm for a mm of the ramp: as wide as drawn and half as much is not softer, thrice is.
  expect([await softer(3, ramp(4.5)), await softer(3, ramp(9))]).toEqual([0, 1]);
  expect([await softer(3, ramp(5.4)), await softer(3, ramp(6.8))]).toEqual([0, 1]); // about twice
  const partly =
    (share: number): Drawn =>
    (x, y) =>
      ramp(y < 6 + 108 * share ? 9 : 2)(x, y);
  expect([await softer(2, partly(0.6)), await softer(2, partly(0.8))]).toEqual([0, 1]);
});

test('it is softer only by a width that shows, 1.2 mm', async () => {
  const softer = async (came: number) => (await judge(ramp(0.3), ramp(came))).length;
  expect([await softer(1.4), await softer(4)]).toEqual([0, 1]);
});

test('an edge of which too little can be seen is not judged', async () => {
  const states = new Uint8Array(count);
  const seenUpTo = async (mm: number) => {
    states.forEach((_, i) => {
      states[i] = i < 2 * mm * size.width ? pixelStates.counts : pixelStates.glare;
    });
    return (await judge(ramp(0.5), ramp(9), { states })).length;
  };
  // Five stretches of five places a mm apart, from 6 mm on.
  expect([await seenUpTo(29), await seenUpTo(34)]).toEqual([0, 1]);
});

test('only what is to be soft or lost can come out too hard', async () => {
  const came = async (kind: Edge['kind']) =>
    (await judge(ramp(6), ramp(0.4), { edge: upright({ kind }) })).map((each) => each.came);
  expect(await came('soft')).toEqual(['harder']);
  expect(await came('lost')).toEqual(['harder']);
  expect(await came('hard')).toEqual([]);
  expect(await came('found')).toEqual([]);
});

test('a wish of hers decides what an edge is to be', async () => {
  const edge = upright({ kind: 'hard', wish: 'soften' });
  expect(await judge(ramp(6), ramp(0.4), { edge })).toMatchObject([
    { decided: 'soft', came: 'harder' },
  ]);
});
