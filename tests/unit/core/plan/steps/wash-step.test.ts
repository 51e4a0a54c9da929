import { describe, expect, test } from 'vitest';
import type { Technique } from '../../../../../app/core/decisions/plan-edit.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { runsAsBead, washStep } from '../../../../../app/core/plan/steps/wash-step.ts';
import { type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';
import { told } from '../../../../support/plan/told.ts';

// Paces are an own estimate, no source.
/** A quarter sheet, 1063 cm2: a tenth of it is 106 cm2. */
const made: MadeWork = {
  slots: [
    { lightness: 70, band: 2, family: 1, share: 0.4, shapes: 30 },
    { lightness: 50, band: 3, family: 2, share: 0.1, shapes: 20 },
    { lightness: 30, band: 4, family: 1, share: 0.2, shapes: 10 },
  ],
  washes: { sheet: [[0, 1, 2], [1, 2], [2], [2]] },
};
const stepOf = (
  wash: number,
  technique: Technique = 'wet on dry',
  facts: PlanFacts = madeFacts(made),
) => {
  const washes = facts.passages[0]?.washes ?? [];
  const own = washes[wash - 1];
  if (!own) throw new Error('no such wash');
  return told(washStep(facts, { passage: 'sheet', wash: own, technique }, washes.length));
};

test('minutes by the wash: 160 cm2 and a shape a second at first, then 80 and two, then 50 and four', () => {
  // 744 cm2 and 60 shapes: 4.65 + 1; 319 and 30: 3.99 + 1; 213 and 10: 4.25 + 0.67.
  expect([1, 2, 3, 4].map((wash) => stepOf(wash).paintMinutes)).toEqual([
    [3, 9],
    [3, 8],
    [3, 8],
    [3, 8],
  ]);
  const large = madeFacts({
    ...made,
    slots: made.slots.map((slot) => ({ ...slot, shapes: 0, share: (slot.share ?? 0) * 10 })),
  });
  const minutes = (wash: number) => stepOf(wash, 'wet on dry', large).paintMinutes;
  expect([1, 2, 3].map(minutes)).toEqual([
    [32, 70],
    [27, 60],
    [29, 64],
  ]);
});

test('titles count the washes; the last of several is that of the darks', () => {
  expect([1, 2, 3, 4].map((wash) => stepOf(wash).title)).toEqual([
    'First wash',
    'Second wash',
    'Third wash',
    'Darks',
  ]);
  expect(stepOf(2, 'glaze').title).toBe('Second wash, a glaze');
  const single = madeFacts({ ...made, washes: { sheet: [[0, 1, 2]] } });
  expect(stepOf(1, 'wet on dry', single).title).toBe('First wash');
});

test('rules: wet-in-wet has its own, another one over paint, and every later wash goes on dry', () => {
  const always = ['R2', 'R3', 'R7', 'R8', 'R9'];
  expect(stepOf(1).rules).toEqual(always);
  expect(stepOf(2).rules).toEqual([...always, 'R5']);
  expect(stepOf(1, 'wet-in-wet').rules).toEqual([...always, 'R6', 'R5']);
  expect(stepOf(2, 'wet-in-wet').rules).toEqual([...always, 'R6', 'R16']);
});

test('what it covers, with what', () => {
  const step = stepOf(2);
  expect(step).toMatchObject({
    key: 'wash/sheet/2',
    bands: [3, 4],
    families: [2, 1],
    slots: [1, 2],
    mixes: ['sheet/2/2', 'sheet/2/1'],
    paper: 'bone dry',
  });
  expect(stepOf(2, 'wet-in-wet').paper).toBe('shiny');
});

describe('a bead', () => {
  const mix = (consistency: 'tea' | 'coffee' | 'milk' | 'cream' | 'butter', parts = 1) => ({
    consistency,
    parts: parts ? [{ paint: 'x', parts }] : [],
  });

  test('runs of what is thinner than cream; what has no paint in it does not count', () => {
    expect(runsAsBead([mix('tea'), mix('coffee'), mix('milk')])).toBe(true);
    expect(runsAsBead([mix('tea'), mix('cream')])).toBe(false);
    expect(runsAsBead([mix('butter')])).toBe(false);
    expect(runsAsBead([mix('butter', 0), mix('tea')])).toBe(true);
  });
});

test('a later wash is begun with the largest shapes it finishes, where there are several', () => {
  const beginning = (shares: readonly [number, number], slots: readonly number[] = [1, 2]) => {
    const facts = madeFacts({
      slots: [
        { lightness: 70, band: 2, family: 1, share: 0.4 },
        { lightness: 50, band: 3, family: 2, share: shares[0], centre: [0.1, 0.9] },
        { lightness: 50, band: 3, family: 3, share: shares[1], centre: [0.9, 0.1] },
      ],
      washes: { sheet: [[0, 1, 2], slots, slots] },
    });
    return stepOf(2, 'wet on dry', facts).prompt;
  };
  expect(beginning([0.2, 0.1])).toMatch(/, the brown lower left first/);
  expect(beginning([0.1, 0.2])).toMatch(/, the blue upper right first/);
  expect(beginning([0.2, 0.1], [1])).not.toMatch(/ first/);
});
