import { expect, test } from 'vitest';
import { advise } from '../../../../app/core/compare/advise.ts';
import type { EdgeVerdict } from '../../../../app/core/compare/comparison.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';

// Edges of the tests' own on a sheet of 380 by 280 mm, and a plan of one wash in two tones (own).
const sheet = { widthMm: 380, heightMm: 280 };
const plan = {
  paper: [96, 0, 0],
  steps: [
    {
      after: [
        [80, 0, 0],
        [40, 5, -5],
      ],
    },
  ],
} as unknown as WashPlan;
const reading = {
  sheet,
  edges: [
    { a: 0, b: 1 },
    { a: 1, b: 0 },
  ],
} as unknown as Parameters<typeof advise>[2];
const verdict = (more: Partial<EdgeVerdict>): EdgeVerdict => ({
  ...{ edge: 0, at: [0.5, 0.5], lengthMm: 40, decided: 'soft', came: 'harder' },
  ...{ expectedMm: 4, measuredMm: 1, contrast: 20 },
  ...more,
});
const advised = (
  edges: readonly EdgeVerdict[],
  nearness: (x: number, y: number) => number = () => 1,
) => advise([], edges, reading, plan, 1, nearness);

test('of four edges the three that matter most are told, what matters most first', () => {
  const lengths = [20, 80, 40, 60].map((lengthMm) =>
    verdict({ lengthMm, at: [lengthMm / 100, 0.5] }),
  );
  expect(advised(lengths).map(({ at }) => at[0])).toEqual([0.8, 0.6, 0.4]);
});

test('a short edge of strong contrast, or near the centre of interest, comes before a long one', () => {
  const [long, strong] = [
    verdict({ at: [0.1, 0.5] }),
    verdict({ at: [0.9, 0.5], lengthMm: 20, contrast: 50 }),
  ];
  expect(advised([long, strong]).map(({ at }) => at[0])).toEqual([0.9, 0.1]);
  const short = verdict({ at: [0.9, 0.5], lengthMm: 20 });
  expect(advised([long, short]).map(({ at }) => at[0])).toEqual([0.1, 0.9]);
  expect(advised([long, short], (x) => (x > 0.5 ? 1 : 0.4)).map(({ at }) => at[0])).toEqual([
    0.9, 0.1,
  ]);
});

test('what came too hard is softened, what came too soft sharpened, from its darker side', () => {
  const [hard, soft] = advised([verdict({}), verdict({ edge: 1, came: 'softer', lengthMm: 30 })]);
  expect(hard).toMatchObject({ mending: 'soften-edge', slot: 1, edge: 0, measured: [40, 5, -5] });
  expect(soft).toMatchObject({ mending: 'sharpen-edge', slot: 1, edge: 1 });
  // A strip of 4 mm along the edge.
  expect(hard?.share).toBeCloseTo((40 * 4) / (380 * 280), 12);
});
