import { describe, expect, it } from 'vitest';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import type { Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import { describeBrokenRules } from '../../../../app/core/plan/rules/check-rules.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import type { White, WhiteWay } from '../../../../app/core/reading/whites/whites.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const limits = { washes: 3, puddlesPerWash: 3 };
const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const hills = tableOf(
  [97, 74, 52, 28],
  [
    [-10, 20],
    [2, -18],
  ],
);
const white = (way: WhiteWay, shortSideMm = 2, slot = 0): White => ({
  at: [0.5, 0.5],
  slot,
  areaMm2: shortSideMm ** 2,
  shortSideMm,
  softShare: 0,
  byHand: false,
  way,
  why: '',
});
const withWhites = (...whites: White[]): Reading => ({ ...madeReading(hills), whites });
const planOf = (reading: Reading) => buildPlan(reading, { box }, noCheckpoint);
const stepOf = (plan: WashPlan, kind: Step['kind']): Step | undefined =>
  plan.steps.find((step) => step.kind === kind);

describe('whites in the plan', () => {
  it('masked where she wants it, however the wash goes on, and how many', async () => {
    const plan = await planOf(withWhites(white('mask'), white('mask'), white('round', 30)));
    expect(stepOf(plan, 'wash')?.technique).toBe('wet on dry');
    expect(stepOf(plan, 'mask')).toMatchObject({ title: 'Mask the small whites', slots: [0] });
    expect(stepOf(plan, 'mask')?.prompt).toContain('the 2 small whites');
    expect(stepOf(plan, 'mask')?.watch).toContain('other whites');
    expect(stepOf(plan, 'unmask')).toBeDefined();
    expect(describeBrokenRules(plan, limits)).toEqual([]);
    const one = await planOf(withWhites(white('mask', 20)));
    expect(stepOf(one, 'mask')?.title).toBe('Mask the white');
    expect(stepOf(one, 'mask')?.watch).not.toContain('other whites');
  });

  it('not masked where none is to be, whatever the small ones are', async () => {
    const soft = [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.9 }));
    const small = hills.map((slot) => ({ ...slot, ...(slot.band === 1 && { smallShapes: 9 }) }));
    const listed = { ...madeReading(small, soft), whites: [white('round'), white('round')] };
    const plan = await planOf(listed);
    expect(stepOf(plan, 'wash')?.technique).toBe('wet-in-wet');
    expect(stepOf(plan, 'mask')).toBeUndefined();
    expect(stepOf(plan, 'wash')?.prompt).toContain('but the whites');
    const { whites: _, ...unlisted } = listed; // as read before whites were listed
    expect(stepOf(await planOf(unlisted), 'mask')).toBeDefined();
  });

  it('last lights stand after all else, with the blade and its cautions', async () => {
    const plan = await planOf(
      withWhites(white('last', 0.7), white('last', 0.7), white('round', 30)),
    );
    const kinds = plan.steps.map(({ kind }) => kind);
    expect(kinds.slice(-2)).toEqual(['last-lights', 'last-look']);
    const lights = stepOf(plan, 'last-lights');
    expect(lights).toMatchObject({
      title: 'Last lights',
      technique: 'opaque white',
      paper: 'bone dry',
    });
    expect(lights?.prompt).toContain('the 2 small whites');
    expect(lights?.cautions).toEqual([expect.stringMatching(/^A blade cuts/)]);
    expect(stepOf(plan, 'wash')?.watch).toContain('2 small whites may be painted over');
    expect(stepOf(plan, 'wash')?.prompt).toContain('but the whites');
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  it('a wash goes over whites that all come back at the end', async () => {
    const plan = await planOf(withWhites(white('last', 0.7)));
    expect(stepOf(plan, 'wash')?.prompt).not.toContain('whites');
    expect(stepOf(plan, 'wash')?.watch).toContain('One small white may be painted over');
    expect(stepOf(plan, 'last-lights')?.title).toBe('Last light');
    expect(plan.steps.at(-1)?.after[0]).toEqual(plan.paper);
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  it('a white of a slot that is painted after all asks for no step', async () => {
    const plan = await planOf(withWhites(white('mask', 2, 5), white('last', 0.5, 5)));
    expect(plan.slots[5]?.reserve).toBe(false);
    expect(stepOf(plan, 'mask')).toBeUndefined();
    expect(stepOf(plan, 'last-lights')).toBeUndefined();
  });

  it('white by her brush stays white, dark as it is in the photo', async () => {
    const made = madeReading(hills);
    const slots = made.slots.map((slot, i) => (i === 7 ? { ...slot, byHand: true } : slot));
    const plan = await planOf({ ...made, slots });
    expect(plan.slots[7]).toMatchObject({ reserve: true, target: [plan.range.paper, 0, 0] });
    for (const { kind, slots: touched } of plan.steps) {
      if (kind === 'wash') expect(touched).not.toContain(7);
    }
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });
});

describe('the check', () => {
  it('sees lights that are not last, or say nothing of the blade', async () => {
    const plan = await planOf(withWhites(white('last', 0.7)));
    const lights = stepOf(plan, 'last-lights') as Step;
    const rest = plan.steps.filter((step) => step !== lights);
    const early = [lights, ...rest].map((step, i) => ({ ...step, n: i + 1 }));
    expect(describeBrokenRules({ ...plan, steps: early }, limits).join()).toMatch(
      /R13.*after the last/,
    );
    const silent = plan.steps.map((step) => (step === lights ? { ...step, cautions: [] } : step));
    expect(describeBrokenRules({ ...plan, steps: silent }, limits).join()).toMatch(
      /R13: nothing said/,
    );
  });
});
