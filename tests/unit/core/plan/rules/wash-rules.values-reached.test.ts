import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { lightnessOfValue } from '../../../../../app/core/colour/lightness.ts';
import type { BrokenRule } from '../../../../../app/core/plan/rules/broken-rule.ts';
import { valuesReached } from '../../../../../app/core/plan/rules/wash-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { ruledPlan } from '../../../../support/plan/ruled-plan.ts';

const limits = { washes: 2, puddlesPerWash: 3 };
const grey = (lightness: number): Lab => [lightness, 0, 0];

describe('every shape reaches its value', () => {
  const slots = [
    { share: 0.3 },
    { share: 0.3 },
    { share: 0.005 },
    { share: 0.0049 },
    { share: 0.3, reserve: true },
  ];
  const steps = [
    { key: 'wash/sheet/1', slots: [0, 1, 2, 3, 4] },
    { key: 'wash/sheet/2', slots: [1] },
    { key: 'last-look/sheet/0', slots: [] },
  ];
  /** Planned are 50 L* everywhere; `got` by slot. */
  const missed = (got: readonly number[], own = steps) => {
    const after = got.map(grey);
    return valuesReached(
      ruledPlan(
        own.map((step) => ({ ...step, after })),
        slots,
      ),
      {
        ...limits,
        planned: slots.map(() => grey(50)),
      },
    );
  };
  const told = (found: readonly BrokenRule[]) =>
    found.map(({ step, sentence }) => [
      step,
      words(sentence).replace(/^Some of these shapes end | than planned\.$/g, ''),
    ]);

  test('from over 8 L* on, at the last wash over the shape', () => {
    expect(missed([50, 50, 50, 50, 50])).toEqual([]);
    expect(missed([58, 42, 50, 50, 50])).toEqual([]);
    expect(told(missed([58.1, 50, 50, 50, 50]))).toEqual([
      ['wash/sheet/1', 'about one value lighter'],
    ]);
    expect(told(missed([50, 41.9, 50, 50, 50]))).toEqual([
      ['wash/sheet/2', 'about one value darker'],
    ]);
  });

  test('not of whites, nor of shapes under half a percent', () => {
    expect(missed([50, 50, 50, 80, 20])).toEqual([]);
    expect(told(missed([50, 50, 80, 80, 20]))).toHaveLength(1);
  });

  test('the worst of a wash is told, to half a value', () => {
    const value = (n: number) => lightnessOfValue(5 + n);
    const far = (by: number, other = 0) => {
      const after = [value(by), grey(50)[0], value(other), 50, 50].map(grey);
      return valuesReached(
        ruledPlan(
          steps.map((step) => ({ ...step, after })),
          slots,
        ),
        {
          ...limits,
          planned: [value(0), 50, value(0), 50, 50].map(grey),
        },
      );
    };
    expect(told(far(1.2))).toEqual([['wash/sheet/1', 'about one value lighter']]);
    expect(told(far(1.3))).toEqual([['wash/sheet/1', 'about 1.5 values lighter']]);
    expect(told(far(-2.2))).toEqual([['wash/sheet/1', 'about 2 values darker']]);
    expect(told(far(-2.2, 3))).toEqual([['wash/sheet/1', 'about 3 values lighter']]);
    expect(far(-3.1, 3)[0]?.what).toBe('slot 0 misses its value');
  });

  test('a shape no wash goes over is told at the end; nothing planned, nothing told', () => {
    expect(told(missed([70, 50, 50, 50, 50], steps.slice(1)))).toEqual([
      ['last-look/sheet/0', 'about 2 values lighter'],
    ]);
    expect(valuesReached(ruledPlan(steps, slots), limits)).toEqual([]);
    expect(valuesReached(ruledPlan([], slots), { ...limits, planned: [] })).toEqual([]);
  });
});
