import { beforeAll, describe, expect, it } from 'vitest';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { coloursWhileWet } from '../../../../app/core/plan/colours-while-wet.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { stepChanges } from '../../../../app/core/plan/step-changes.ts';
import { changesInWords } from '../../../../app/core/words/plan/beside.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

let plan: WashPlan;
const chosen = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

beforeAll(async () => {
  const hues = [
    [-10, 20],
    [2, -18],
  ] as const;
  const reading = madeReading(tableOf([97, 74, 52, 28], hues));
  plan = await buildPlan(reading, { box: chosen, chosen, washes: 2 }, noCheckpoint);
});

const indexOf = (kind: string): number => plan.steps.findIndex((step) => step.kind === kind);

describe('while it is wet', () => {
  it('a wash is darker than it dries where it lies, as its mixes say, and nowhere else', () => {
    const step = plan.steps[indexOf('wash')];
    if (!step) throw new Error('no wash');
    const wet = coloursWhileWet(plan, step);
    expect(step.mixes.length).toBeGreaterThan(0);
    for (const [i, lab] of wet.entries()) {
      const dry = step.after[i];
      if (!step.slots.includes(i)) expect(lab).toEqual(dry);
      else expect(lab[0]).toBeLessThan(dry?.[0] ?? 0);
    }
    for (const row of plan.mixes.filter(({ id }) => step.mixes.includes(id))) {
      for (const strength of row.weaker ? [row, row.weaker] : [row]) {
        const at = step.after.findIndex((lab) => lab.every((x, k) => x === strength.expected[k]));
        if (at < 0) continue;
        for (const k of [0, 1, 2] as const)
          expect(wet[at]?.[k]).toBeCloseTo(strength.expectedWet?.[k] ?? Number.NaN, 9);
      }
    }
  });

  it('no other step leaves the sheet to look wet', () => {
    for (const kind of ['dry', 'accents', 'last-look']) {
      const step = plan.steps[indexOf(kind)];
      expect(step && coloursWhileWet(plan, step)).toEqual(step?.after);
    }
  });
});

describe('what a step changes', () => {
  it('is, in the first wash, all but the whites; in the darks, only darker shapes', () => {
    const first = stepChanges(plan, indexOf('wash'));
    const painted = plan.slots.flatMap((slot, i) => (slot.reserve ? [] : [i]));
    expect([...first.slots]).toEqual(painted);
    expect(first.share).toBeCloseTo(0.75, 9);
    const darks = plan.steps.findIndex(({ key }) => key === 'wash/sheet/2');
    const second = stepChanges(plan, darks);
    expect(second.slots.size).toBeGreaterThan(0);
    expect(second.slots.size).toBeLessThan(painted.length);
    expect(second.darkerBy).toBeGreaterThan(5);
    expect(changesInWords(second)).toMatch(
      /^\d+ % of the sheet gets darker, by up to \d\.\d values?;/,
    );
  });

  it('is nothing while it dries or is looked at', () => {
    for (const kind of ['prepare', 'dry', 'last-look']) {
      const { slots, share } = stepChanges(plan, indexOf(kind));
      expect([slots.size, share]).toEqual([0, 0]);
    }
    expect(changesInWords(stepChanges(plan, 0))).toContain('looks the same');
  });
});
