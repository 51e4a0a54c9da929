import { expect, test } from 'vitest';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';
import {
  type Comparing,
  paintedComparing,
  unsteadyHand,
} from '../../../support/compare/correcting-painter.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

// A painter of the tests' own, tubes 15 % off in strength, loads 10 %; the limits are those of the task (own). The
// whole dose: `npm run measures -- correcting`.
const reading = madeReading(
  tableOf(
    [90, 70, 52, 34],
    [
      [4, 34],
      [-2, -26],
      [14, 8],
    ],
  ),
);
const chosen = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const plan = await buildPlan(reading, { chosen }, async () => {});

function missOf(comparing: Comparing) {
  const sheets = Array.from({ length: 24 }, (_, seed) =>
    paintedComparing(
      plan,
      reading,
      comparing,
      { hand: unsteadyHand, noise: 1 },
      seededRandom(seed),
    ),
  );
  const sorted = sheets.map(({ lightness }) => lightness).sort((one, two) => one - two);
  const mean = sorted.reduce((sum, each) => sum + each, 0) / sorted.length;
  return { mean, median: sorted[sorted.length >> 1] as number, sheets };
}

test('a painter who compares after every wash and takes the advice ends nearer to her plan', () => {
  const [never, first, every] = [missOf('never'), missOf('first'), missOf('every')];
  expect(never.median).toBeLessThan(2.5);
  expect(every.median).toBeLessThan(1.5);
  expect(every.mean).toBeLessThan(never.mean);
  expect(first.mean).toBeLessThan(never.mean);
  expect(every.sheets.some(({ advice }) => advice > 0)).toBe(true);
});
