import { describe, expect, it } from 'vitest';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { fewEnough } from '../../../../workers/kernels/plan/evening/few-enough.ts';
import { quietStep } from '../../../../workers/kernels/plan/step-draft.ts';

const step = (kind: Step['kind'], n: number, title: string = kind): Step => ({
  ...quietStep,
  n,
  after: [],
  key: `${kind}/sheet/${n}`,
  kind,
  title,
  prompt: '.',
  paintMinutes: [1, 2],
});

const planOf = (washes: number): Step[] =>
  [
    ...Array.from({ length: washes }, () => 'wash' as const),
    'lift' as const,
    'splatter' as const,
    'accents' as const,
    'last-lights' as const,
    'last-look' as const,
  ].map((kind, n) => step(kind, n));

const keysOut = (washes: number): string[] =>
  fewEnough(planOf(washes)).edits.map(
    (edit) => ('key' in edit ? edit.key : '').split('/')[0] ?? '',
  );

describe('twelve painting steps', () => {
  it.each([
    [8, []],
    [9, ['splatter']],
    [10, ['splatter', 'lift']],
    [11, ['splatter', 'lift', 'accents']],
    [13, ['splatter', 'lift', 'accents']],
  ])('with %i washes leave out %j, the last lights never', (washes, out) => {
    expect(keysOut(washes)).toEqual(out);
  });

  it('say what is left out', () => {
    expect(fewEnough(planOf(8)).why).toBeUndefined();
    expect(fewEnough(planOf(10)).why).toBe(
      'Left out, as 12 painting steps are enough: splatter and lift.',
    );
  });
});
