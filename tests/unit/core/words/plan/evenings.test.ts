import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Range } from '../../../../../app/core/colour/lab.ts';
import { eveningTimes } from '../../../../../app/core/plan/evening/evening-times.ts';
import type { Step, WashPlan } from '../../../../../app/core/plan/plan.ts';
import { sheetOf, smallerSheet } from '../../../../../app/core/reference/sheet.ts';
import { eveningName, planTimeInWords } from '../../../../../app/core/words/plan/evenings.ts';
import { typedMinutes } from '../../../../../app/core/words/typed-number.ts';
import { plainStep } from '../../../../support/session/plain-step.ts';

// Limits and figures are (own): the docstrings of what is tested say why.
it('the name of an evening', () => {
  expect([1, 2, 5].map(eveningName)).toEqual(['First evening', 'Second evening', 'Evening 5']);
});

const plan = (
  steps: readonly (Pick<Step, 'kind'> & { dries?: Range; evening?: number })[],
): Pick<WashPlan, 'steps' | 'paper'> => ({
  paper: [96, 0, 0],
  steps: steps.map(({ kind, dries = [0, 0], evening }, i) => ({
    ...plainStep(i + 1),
    key: `${kind}/${i}`,
    kind,
    paintMinutes: [4, 9],
    dryMinutes: dries,
    ...(evening && { evening }),
  })),
});

describe('time of a plan', () => {
  it('adds up work and waiting, each by the middle of its range on a ratio scale', () => {
    const [only, ...more] = eveningTimes(
      plan([{ kind: 'wash', dries: [25, 100] }, { kind: 'dry' }, { kind: 'accents' }]),
    );
    expect(more).toEqual([]);
    expect(only).toEqual({
      evening: 1,
      range: [12 + 25, 27 + 100],
      likely: 18 + 50,
      likelyWait: 50,
    });
    expect(planTimeInWords(only ? [only] : [])).toBe('About 1 h 10 min, 50 min of it waiting.');
  });

  it('what dries over night, or after the last touch, is waited for by no one', () => {
    const times = eveningTimes(
      plan([
        { kind: 'wash', dries: [25, 100], evening: 1 },
        { kind: 'dry', evening: 1 },
        { kind: 'wash', dries: [4, 16], evening: 2 },
        { kind: 'dry', evening: 2 },
        { kind: 'accents', dries: [25, 100], evening: 2 },
        { kind: 'dry', evening: 2 },
        { kind: 'last-look', evening: 2 },
      ]),
    );
    expect(times.map(({ likelyWait }) => likelyWait)).toEqual([0, 8]);
    expect(planTimeInWords(times)).toBe(
      'First evening about 12 min. Second evening about 40 min, 8 min of it waiting.',
    );
  });
});

describe('a smaller sheet', () => {
  it('has the same shape and the area asked for, to the millimetre', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 1000 }),
        fc.integer({ min: 150, max: 1000 }),
        fc.constantFrom(1 / 2, 1 / 4),
        (widthMm, heightMm, share) => {
          const small = smallerSheet({ format: 'own', widthMm, heightMm }, share);
          if (!small) throw new Error('none');
          const scale = Math.sqrt(share);
          expect(Math.abs(small.widthMm - widthMm * scale)).toBeLessThanOrEqual(2);
          expect(Math.abs(small.heightMm - heightMm * scale)).toBeLessThanOrEqual(2);
        },
      ),
    );
  });

  it('is one that is sold where there is one, and none too small to paint on', () => {
    expect(smallerSheet(sheetOf('a4', 'upright'), 1 / 2)).toEqual(sheetOf('a5', 'upright'));
    expect(smallerSheet(sheetOf('half', 'across'), 1 / 4)).toEqual(sheetOf('eighth', 'across'));
    expect(smallerSheet(sheetOf('quarter', 'across'), 1 / 2)?.format).toBe('own');
    expect(smallerSheet({ format: 'own', widthMm: 60, heightMm: 90 }, 1 / 2)).toBeNull();
  });
});

it.each<[string, number | RegExp]>([
  ['90', 90],
  [' 45,4 ', 45],
  ['20', 20],
  ['1440', 1440],
  ['19', /no time for a wash/],
  ['2000', /A day has/],
  ['an hour', /can't be read/],
])('%j typed as minutes', (text, wanted) => {
  const got = typedMinutes(text);
  if (typeof wanted === 'number') expect(got).toBe(wanted);
  else expect(got).toMatch(wanted);
});
