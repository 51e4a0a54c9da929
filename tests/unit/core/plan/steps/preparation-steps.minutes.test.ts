import { expect, test } from 'vitest';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import {
  addPaperFixing,
  paperFixing,
  prepareStep,
  puddlesStep,
  transferStep,
} from '../../../../../app/core/plan/steps/preparation-steps.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';
import { told } from '../../../../support/plan/told.ts';

// Minutes and the limits of weight and water are own estimates, no source.
const made: MadeWork = {
  slots: [
    { lightness: 70, band: 2, family: 1, share: 0.5, shapes: 30 },
    { lightness: 30, band: 3, family: 2, share: 0.3, shapes: 24 },
  ],
  washes: { sheet: [[0, 1], [1]] },
};
const facts = madeFacts(made);

test('preparing takes 3 to 8 minutes, mixing 3 and 6 and for each puddle 1 to 3 more', () => {
  expect(prepareStep(facts).paintMinutes).toEqual([3, 8]);
  const two = told(puddlesStep(facts));
  expect(two).toMatchObject({ title: 'Mix the puddles', paintMinutes: [5, 12] });
  expect(two.mixes).toEqual(['sheet/1/1', 'sheet/1/2']);
  expect(two.families).toEqual([1, 2]);
  expect(two.prompt).toMatch(/Brush each on a scrap/);
  const one = told(puddlesStep(madeFacts({ ...made, washes: { sheet: [[0], [1]] } })));
  expect(one).toMatchObject({ title: 'Mix the puddle', paintMinutes: [4, 9] });
  expect(one.prompt).toMatch(/Brush it on a scrap/);
});

test('drawing takes a quarter of the area at 40 cm2 a minute and eight seconds a shape, of sixty at most', () => {
  // 850 cm2 / 4 / 40 are 5.3 minutes, 54 shapes 7.2 more.
  expect(transferStep(facts).paintMinutes).toEqual([8, 19]);
  const many = (shapes: number) =>
    transferStep(madeFacts({ ...made, slots: made.slots.map((slot) => ({ ...slot, shapes })) }))
      .paintMinutes;
  expect(many(30)).toEqual([9, 20]); // 5.3 + 8
  expect(many(300)).toEqual([9, 20]);
});

test.each([
  ['on its block', 300, 'block', 150, [2, 5]],
  ['soaked', 300, 'wet', 60, [8, 20]],
  ['of 500 g/m2, as it is', 500, 'board', 150, [2, 5]],
  ['of 499, wetted', 499, 'board', 100, [4, 10]],
  ['of 250, hardly wet', 250, 'board', 99, [3, 8]],
  ['of 249, stretched', 249, 'board', 100, [10, 20]],
  ['of 249, taped', 249, 'board', 99, [4, 10]],
] as const)(
  'minutes to fix a sheet %s: %i g/m2, %s, %i g/m2 of water',
  (_, gsm, under, water, minutes) => {
    const weather = under === 'board' ? roomWeather : { ...roomWeather, backing: under };
    expect(paperFixing({ gsm, fibre: 'cotton' }, weather, water).minutes).toEqual(minutes);
  },
);

test('a sheet is fixed for the wettest step there is, whichever it is', () => {
  const step = (kind: Step['kind'], waterGramsPerSquareMetre?: number) =>
    ({
      ...prepareStep(facts),
      n: 1,
      after: [],
      key: `${kind}/sheet/1`,
      kind,
      ...(kind === 'wash' && { technique: 'wet on dry' }),
      ...(waterGramsPerSquareMetre && { waterGramsPerSquareMetre }),
    }) as Step;
  const fixed = (...steps: readonly Step[]) => addPaperFixing(facts, [step('prepare'), ...steps]);
  const how = (...steps: readonly Step[]) => words(fixed(...steps)[0]?.prompt).split('.')[0];
  expect(how()).toBe('Tape or clip the sheet to a board');
  expect(how(step('wash', 99), step('wash', 30))).toBe('Tape or clip the sheet to a board');
  expect(how(step('wash', 100), step('wash', 30))).toMatch(/gummed tape/);
  expect(how(step('wash', 30), step('wash', 100))).toMatch(/gummed tape/);
  const look = step('last-look');
  expect(fixed(look)[1]).toBe(look);
});
