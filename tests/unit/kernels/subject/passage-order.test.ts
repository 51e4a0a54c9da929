import { describe, expect, test } from 'vitest';
import type { WashPlan } from '../../../../app/model/wash-plan.ts';
import { noCheckpoint } from '../../../../workers/kernels/palette/checkpoint.ts';
import { buildWashPlan } from '../../../../workers/kernels/plan/build-wash-plan.ts';
import { brokenRules } from '../../../../workers/kernels/plan/check-rules.ts';
import { type MadeBorder, type MadeSlot, madeReading } from '../paint/made-reading.ts';

// Rules R18 and R20 of the trade notes; common practice, no source.
const limits = { washes: 3, puddlesPerWash: 3 };
const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

const passage = (name: string, ...lightnesses: number[]): MadeSlot[] =>
  lightnesses.map((lightness, i) => ({
    passage: name,
    band: i + 1,
    family: 1,
    share: 0.5 / lightnesses.length,
    lab: [lightness, 0, 10],
  }));

/** Slots 0..2 are the ground, 3..5 the subject; `lost` of the line between them. */
function planned(
  ground: number[],
  subject: number[],
  soft: number,
  lost = 0,
  subjectSoft = 0.1,
): Promise<WashPlan> {
  const within = (a: number, share: number): MadeBorder => ({
    a,
    b: a + 1,
    lengthMm: 200,
    soft: share,
  });
  const line: MadeBorder = { a: 1, b: 4, lengthMm: 300, soft: 0, lost };
  const borders = [
    within(0, soft),
    within(1, soft),
    within(3, subjectSoft),
    within(4, subjectSoft),
    line,
  ];
  const slots = [...passage('ground', ...ground), ...passage('subject', ...subject)];
  return buildWashPlan(madeReading(slots, borders), { box }, noCheckpoint);
}

const order = (plan: WashPlan): string[] =>
  plan.steps.filter(({ kind }) => kind === 'wash').map(({ key }) => key.split('/')[1] ?? '');
const washesOf = (plan: WashPlan, name: string) =>
  plan.steps.filter(({ key }) => key.startsWith(`wash/${name}/`));

describe('passages', () => {
  test('a soft ground comes before a crisp subject, whatever their values', async () => {
    for (const subject of [
      [85, 70, 50],
      [60, 45, 25],
    ]) {
      const plan = await planned([80, 60, 40], subject, 0.8);
      expect(brokenRules(plan, limits)).toEqual([]);
      expect([...new Set(order(plan))]).toEqual(['ground', 'subject']);
      expect(washesOf(plan, 'ground')[0]?.watch).toContain('soft and the subject crisp');
      expect(washesOf(plan, 'subject')[0]?.watch).toContain('ground must be bone dry');
    }
  });

  test('a light subject comes before a dark ground that is cut round it', async () => {
    const plan = await planned([60, 45, 20], [90, 75, 60], 0.1);
    expect(brokenRules(plan, limits)).toEqual([]);
    expect([...new Set(order(plan))]).toEqual(['subject', 'ground']);
    expect(washesOf(plan, 'subject')[0]?.watch).toContain('Subject first');
    for (const step of washesOf(plan, 'ground')) expect(step.rules).toContain('R20');
  });

  test('a light ground comes before a dark subject', async () => {
    const plan = await planned([90, 75, 60], [60, 45, 20], 0.1);
    expect([...new Set(order(plan))]).toEqual(['ground', 'subject']);
    expect(washesOf(plan, 'ground')[0]?.watch).toContain('it is the lighter');
  });

  test('the first washes keep to the line; a lost line is let go', async () => {
    const plan = await planned([80, 60, 40], [80, 60, 40], 0.1, 0.8);
    expect(washesOf(plan, 'ground')[0]?.prompt).toContain('ground up to the subject');
    expect(washesOf(plan, 'subject')[0]?.watch).toContain('line is lost');
    for (const { prompt } of plan.steps) expect(prompt.length).toBeLessThanOrEqual(160);
    expect(brokenRules(plan, limits)).toEqual([]);
  });

  test('prompts stay short where both are wet and have whites', async () => {
    const plan = await planned([98, 70, 40], [98, 70, 40], 0.9, 1, 0.9);
    expect(plan.steps.filter(({ technique }) => technique === 'wet-in-wet').length).toBeGreaterThan(
      1,
    );
    expect(washesOf(plan, 'subject')[0]?.prompt).toContain('ground, but not the whites');
    expect(brokenRules(plan, limits)).toEqual([]); // prompts of at most 160 signs are among them
  });

  test('a plan that goes back and forth, or keeps quiet about the line, is found', async () => {
    const plan = await planned([80, 60, 40], [85, 70, 50], 0.8);
    const washes = plan.steps.filter(({ kind }) => kind === 'wash');
    const swapped = [washes[0], washes.at(-1), ...washes.slice(1, -1)].flatMap((one) => one ?? []);
    expect(brokenRules({ ...plan, steps: swapped }, limits).join()).toContain('R18');
    const quiet = plan.steps.map((step) => ({ ...step, rules: [] }));
    expect(brokenRules({ ...plan, steps: quiet }, limits).join()).toContain('R18');
  });
});
