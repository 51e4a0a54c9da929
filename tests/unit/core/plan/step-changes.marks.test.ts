import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import type { Mark } from '../../../../app/core/plan/details/mark.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { stepChanges } from '../../../../app/core/plan/step-changes.ts';
import { changesInWords } from '../../../../app/core/words/plan/beside.ts';

// Two slots of a sheet and what lies on it step by step, by hand; what is seen and what is said of it is (own).
const paper: Lab = [96, 0, 2];
const [one, two, three] = [1, 2, 3].map((n) => ({ at: [n / 10, 0.5] }) as unknown as Mark);
const planOf = (
  ...steps: readonly (readonly [readonly Lab[], (readonly (Mark | undefined)[])?])[]
) =>
  ({
    paper,
    slots: [{ share: 0.75 }, { share: 0.25 }],
    steps: steps.map(([after, marks]) => ({ after, ...(marks && { marks }) })),
  }) as unknown as WashPlan;

test('the marks of a step are those that did not lie there before', () => {
  const plan = planOf(
    [[paper, paper]],
    [[paper, paper], [one]],
    [
      [paper, paper],
      [one, two, three],
    ],
  );
  expect([0, 1, 2].map((step) => stepChanges(plan, step).marks)).toEqual([[], [one], [two, three]]);
  expect(changesInWords(stepChanges(plan, 2))).toBe(
    '2 marks; the rest, dimmed here, stays as it was.',
  );
});

test('half a unit of L*, a* or b* is seen, and the darkest change is told', () => {
  const changed = (...by: readonly Lab[]) => {
    const off = ([l, a, b]: Lab): Lab => [paper[0] - l, paper[1] + a, paper[2] + b];
    return stepChanges(planOf([by.map(off)]), 0);
  };
  expect([...changed([0.49, 0.49, -0.49], [0, 0, 0.51]).slots]).toEqual([1]);
  expect([...changed([0.51, 0, 0], [0, -0.51, 0]).slots]).toEqual([0, 1]);
  expect(changed([12, 0, 0], [30, 0, 0])).toMatchObject({ share: 1, darkerBy: 30 });
  expect(changed([12, 0, 0], [0, 0, 0])).toMatchObject({ share: 0.75, darkerBy: 12 });
});

test('in words: how much of the sheet, and by how many values', () => {
  const said = (share: number, darkerBy: number): string =>
    changesInWords({ share, darkerBy, marks: [] });
  // A Munsell value is about 10 L* (ASTM D1535, 2014).
  expect(said(0.996, 20)).toMatch(/^All of the sheet gets darker, by up to \d\.\d values/);
  expect(said(0.99, 20)).toMatch(/^99 % of the sheet/);
  expect(said(0.001, 20)).toMatch(/^1 % of the sheet/);
  expect(said(0.5, 2)).toMatch(/^50 % of the sheet gets darker, hardly at all;/);
  expect(said(0.5, 10)).toMatch(/by up to 1\.0 value;/);
  expect(said(0, 0)).toMatch(/looks the same/);
});
