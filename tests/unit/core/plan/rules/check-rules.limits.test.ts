import { describe, expect, test } from 'vitest';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { ruleLimitsOf } from '../../../../../app/core/plan/rules/check-rules.ts';
import { madeFacts } from '../../../../support/plan/made-work.ts';

// A plan's own figures are what changes are held to: R9 and R10 in app/core/plan/rules/rules.md.
const facts = madeFacts({
  slots: [
    { lightness: 96, band: 1, family: 1, reserve: true, smallShapes: 9, passage: 'ground' },
    { lightness: 96, band: 1, family: 2, reserve: true, smallShapes: 4, passage: 'subject' },
    { lightness: 50, band: 3, family: 1, smallShapes: 30, passage: 'ground' },
    {
      lightness: 96,
      band: 1,
      family: 3,
      reserve: true,
      smallShapes: 7,
      share: 0,
      passage: 'ground',
    },
  ],
  washes: { ground: Array.from({ length: 8 }, () => [2]), subject: [[1]] },
});
const step = (kind: Step['kind'], lightness: number): Step =>
  ({ kind, after: [[lightness, 0, 0]] }) as unknown as Step;
const counted = (of: PlanFacts, ...planned: readonly Step[]) => [
  ...(ruleLimitsOf(of, planned).smallWhites ?? []),
];

describe('small whites to paint round', () => {
  const { whites: _, ...reading } = facts.reading;
  const unlisted: PlanFacts = { ...facts, reading };

  test('of a reading from before whites were listed: those of its slots, unless the plan masks', () => {
    expect(counted(unlisted, step('wash', 50))).toEqual([
      ['ground', 9],
      ['subject', 4],
    ]);
    expect(counted(unlisted, step('mask', 96), step('wash', 50))).toEqual([]);
  });

  test('of one that lists none: none', () => {
    const none: PlanFacts = { ...facts, reading: { ...facts.reading, whites: [] } };
    expect(counted(none, step('wash', 50))).toEqual([]);
  });
});

test('as many washes as it has where paper bears fewer (own), a hair dryer where she has one, the sheet as it is after the last step', () => {
  const limits = ruleLimitsOf(facts, [step('wash', 70), step('wash', 50)]);
  expect(limits.washes).toBe(8);
  expect(limits.hairDryer).toBe(false);
  expect(limits.planned).toEqual([[50, 0, 0]]);
  expect(ruleLimitsOf(facts, []).planned).toEqual([]);
  const warm = { ...facts, weather: { ...facts.weather, hairDryer: true } };
  expect(ruleLimitsOf(warm, []).hairDryer).toBe(true);
});
