import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { planMinutes, planRows } from '../../../../../app/core/plan/evening/evening-times.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import { plainStep } from '../../../../support/session/plain-step.ts';

const paper: Lab = [95, 0, 0];
const grey: Lab = [60, 0, 0];

const step = (n: number, over: Partial<Step>): Step => ({
  ...plainStep(n),
  after: [paper, paper],
  ...over,
});

const steps = [
  step(1, { kind: 'prepare', paintMinutes: [3, 8] }),
  step(2, { paintMinutes: [5, 10], dryMinutes: [30, 80], after: [grey, paper] }),
  step(3, { kind: 'dry', paintMinutes: [1, 2], after: [grey, paper] }),
  step(4, { paintMinutes: [2, 4], dryMinutes: [20, 60], after: [grey, grey] }),
  step(5, { kind: 'last-look', paintMinutes: [3, 10], after: [grey, grey] }),
];

// Limits and figures are (own): the docstrings of what is tested say why.
test('a drying check stands with the step it waits for, and only changes are pictured', () => {
  expect(
    planRows({ steps, paper }).map(({ step: { n }, wait, changes }) => [n, wait, changes]),
  ).toEqual([
    [1, null, false],
    [2, [30, 80], true],
    [4, null, true],
    [5, null, false],
  ]);
});

test('times are summed: drying only where it is waited for', () => {
  const dried = [...steps.slice(0, 4), step(5, { kind: 'dry' }), ...steps.slice(4)];
  expect(planMinutes({ steps: dried, paper }).wait).toEqual([30, 80]);
  expect(planMinutes({ steps, paper })).toEqual({ work: [14, 34], wait: [30, 80] });
  expect(planMinutes({ steps: [], paper })).toEqual({ work: [0, 0], wait: [0, 0] });
});
