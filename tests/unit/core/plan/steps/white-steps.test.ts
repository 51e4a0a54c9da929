import { describe, expect, test } from 'vitest';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import {
  hasWhitesToLeave,
  lastLightsStep,
  maskStep,
  plannedWhites,
  unmaskStep,
  whitesToMask,
} from '../../../../../app/core/plan/steps/white-steps.ts';
import type { White } from '../../../../../app/core/reading/whites/whites.ts';
import { type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';
import { told } from '../../../../support/plan/told.ts';

// Paces and limits are own estimates, no source.
const made: MadeWork = {
  slots: [
    { lightness: 97, band: 1, reserve: true, share: 0.02, smallShapes: 3, passage: 'subject' },
    { lightness: 60, passage: 'subject' },
    { lightness: 96, band: 1, reserve: true, share: 0.03, passage: 'ground' },
    { lightness: 40, passage: 'ground' },
  ],
  washes: { ground: [[3]], subject: [[1]] },
};
const white = (slot: number, way: White['way'], changed: Partial<White> = {}): White => ({
  at: [0.5, 0.5],
  slot,
  areaMm2: 150,
  shortSideMm: 10,
  softShare: 0,
  byHand: false,
  way,
  why: '',
  ...changed,
});
const small = { areaMm2: 4, shortSideMm: 1.5 };
const facts = (whites: readonly White[] | undefined, fibre?: MadeWork['fibre']): PlanFacts => {
  const { reading, ...others } = madeFacts(fibre ? { ...made, fibre } : made);
  const { whites: _, ...plain } = reading;
  return {
    ...others,
    reserves: { share: 0.05, count: 5, smallCount: 3 },
    reading: { ...plain, ...(whites && { whites }) },
  };
};

describe('whites by their way', () => {
  test('those that these paints make no white of are none', () => {
    const whites = [white(0, 'round'), white(1, 'round'), white(2, 'mask'), white(0, 'last')];
    expect(plannedWhites(facts(whites))).toEqual({
      round: [whites[0]],
      mask: [whites[2]],
      last: [whites[3]],
    });
    expect(plannedWhites(facts(undefined))).toBeNull();
  });

  test('a passage leaves out its own that are painted round or masked, not those brought back', () => {
    const leaves = (...whites: readonly White[]) =>
      ['subject', 'ground'].map((passage) => hasWhitesToLeave(facts(whites), passage));
    expect(leaves(white(0, 'round'))).toEqual([true, false]);
    expect(leaves(white(2, 'mask'))).toEqual([false, true]);
    expect(leaves(white(0, 'last'))).toEqual([false, false]);
    expect(leaves(white(1, 'round'))).toEqual([false, false]);
    // From before whites were listed: wherever something is kept white.
    const before = facts(undefined);
    expect(hasWhitesToLeave(before, 'ground')).toBe(true);
    const slots = before.slots.map((slot, i) => (i === 2 ? { ...slot, share: 0 } : slot));
    expect(hasWhitesToLeave({ ...before, slots }, 'ground')).toBe(false);
    expect(hasWhitesToLeave({ ...before, slots }, 'subject')).toBe(true);
  });
});

describe('masked', () => {
  test('are those whose way it is: how many, where, how large', () => {
    const whites = [white(2, 'mask', small), white(0, 'mask', small), white(2, 'mask', small)];
    expect(whitesToMask(facts(whites), false)).toEqual({
      count: 3,
      slots: [0, 2],
      cm2: 0.12,
      isSmall: true,
      othersToo: false,
    });
    const more = [...whites, white(2, 'mask'), white(0, 'round')];
    expect(whitesToMask(facts(more), false)).toMatchObject({
      count: 4,
      cm2: 1.62,
      isSmall: false,
      othersToo: true,
    });
    expect(whitesToMask(facts([white(0, 'round')]), true)).toBeNull();
  });

  test('without a list, from three small ones on under a wet wash', () => {
    const few = (smallCount: number): PlanFacts => ({
      ...facts(undefined),
      reserves: { share: 0.05, count: 5, smallCount },
    });
    expect(whitesToMask(few(2), true)).toBeNull();
    expect(whitesToMask(few(3), false)).toBeNull();
    const masked = whitesToMask(few(3), true);
    expect(masked).toMatchObject({ count: 3, slots: [0, 2], isSmall: true, othersToo: true });
    // A tenth of all that is kept white: 5 % of 1063 cm2.
    expect(masked?.cm2).toBeCloseTo(5.315, 3);
  });

  test('is brushed on at 20 cm2 a minute and ten seconds each, rubbed off at 30 and five', () => {
    const masked = { count: 30, slots: [0], cm2: 100, isSmall: true, othersToo: true };
    // 5 minutes and 5 more; 3.33 and 2.5 more: from 0.7 to 1.5 times that.
    expect(told(maskStep(masked))).toMatchObject({
      title: 'Mask the small whites',
      paintMinutes: [7, 15],
      watch: expect.stringMatching(/^Paint round the other whites instead\./),
    });
    expect(told(maskStep(masked)).prompt).toMatch(/over the 30 small whites to mask/);
    expect(unmaskStep(masked).paintMinutes).toEqual([4, 9]);
    const one = told(maskStep({ ...masked, count: 1, isSmall: false, othersToo: false }));
    expect(one.title).toBe('Mask the white');
    expect(one.prompt).toMatch(/over the one white to mask/);
    expect(one.watch).toMatch(/^Try it on a scrap/);
  });
});

describe('last lights', () => {
  test('are brought back at eight seconds each; a blade only on cotton', () => {
    expect(lastLightsStep(facts([white(0, 'round')]))).toBeNull();
    expect(lastLightsStep(facts(undefined))).toBeNull();
    const lights = Array.from({ length: 45 }, (_, n) => white(n % 2 ? 0 : 2, 'last', small));
    const step = told(lastLightsStep(facts(lights)));
    expect(step).toMatchObject({ title: 'Last lights', slots: [0, 2], paintMinutes: [4, 9] });
    expect(step?.prompt).toMatch(/the 45 small whites: .* or a scrape with a blade/);
    const one = told(lastLightsStep(facts([white(0, 'last')], 'cellulose')));
    expect(one).toMatchObject({ title: 'Last light', slots: [0], paintMinutes: [1, 2] });
    expect(one?.prompt).toMatch(/the one white: a touch of opaque white with a small brush\.$/);
    expect(one?.watch).toMatch(/No blade on this paper: it tears\.$/);
  });
});
