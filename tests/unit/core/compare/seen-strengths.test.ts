import { expect, test } from 'vitest';
import { layersOn } from '../../../../app/core/compare/mend.ts';
import { seenStrengths } from '../../../../app/core/compare/seen-strengths.ts';
import {
  type StrengthLesson,
  strengthCorrections,
} from '../../../../app/core/paint/strength-corrections.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../../app/core/plan/plan-memory.ts';
import { random } from '../../../support/compare/scene.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { type Hand, paintedByHand } from '../../../support/simulated-painter.ts';

// A painter of the tests' own; how far tubes and hand are off is that of the task (own).
const [yellow, blue, earth] = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const chosen = [yellow, blue, earth];
const reading = madeReading(
  tableOf(
    [90, 70, 52, 34],
    [
      [4, 34],
      [-2, -26],
      [14, 8],
    ],
  ),
);
const memory = createPlanMemory();
const planned = (strengths: readonly { paint: string; factor: number }[] = []) =>
  buildPlan(reading, { chosen, strengths }, async () => {}, memory);

const steady: Hand = { strength: 0, ratio: 0, spread: 'normal' };
const hers: Hand = { strength: 0.1, ratio: 0, spread: 'normal' };

/** The sheet as it comes of tubes so many times as strong as the table's; measured less planned of every slot. */
function painted(
  plan: WashPlan,
  tubes: Readonly<Record<string, number>>,
  hand: Hand,
  seed: number,
) {
  const optics = plan.optics.map((paint) => {
    const { strength = 1, corrected = 1 } = paint;
    return { ...paint, strength: (strength / corrected) * (tubes[paint.id] ?? 1) };
  });
  const next = random(seed);
  for (let n = 0; n < 5; n++) next();
  const meant = paintedByHand(plan, steady, next);
  const came = paintedByHand({ ...plan, optics }, hand, next);
  return plan.slots.flatMap(({ share, reserve }, slot) =>
    reserve ? [] : [{ slot, share, difference: (came[slot]?.[0] ?? 0) - (meant[slot]?.[0] ?? 0) }],
  );
}

const lastWash = ({ steps }: WashPlan): number =>
  steps.findLast(({ kind }) => kind === 'wash')?.n ?? 0;

test('a paint that is stronger than reckoned is named, and no other; as planned none is', async () => {
  const plan = await planned();
  const n = lastWash(plan);
  expect(seenStrengths(plan, n, painted(plan, {}, steady, 1))).toEqual([]);
  const seen = seenStrengths(plan, n, painted(plan, { [blue as string]: 1.35 }, steady, 1));
  const found = seen.find(({ paint }) => paint === blue);
  expect(found?.times).toBeGreaterThan(1.08);
  expect(found?.times).toBeLessThan(1.4);
  for (const { paint, times } of seen)
    if (paint !== blue) expect(times).toBeLessThan(found?.times ?? 0);
});

test('one slot of a mix alone tells of none of its paints', async () => {
  const plan = await planned();
  const n = lastWash(plan);
  const rows = painted(plan, { [blue as string]: 1.35 }, steady, 1);
  const mixed = rows.filter(({ slot }) => {
    const parts = layersOn(plan, slot, n).flatMap((layer) => layer.parts);
    return new Set(parts.map(({ paint }) => paint)).size > 1;
  });
  expect(Math.max(...mixed.map(({ difference }) => Math.abs(difference)))).toBeGreaterThan(3);
  for (const row of mixed) expect(seenStrengths(plan, n, [row])).toEqual([]);
});

test('what was not painted at all is no matter of strength', async () => {
  const plan = await planned();
  const rows = painted(plan, {}, steady, 1).map((row) => ({ ...row, difference: 60 }));
  expect(seenStrengths(plan, lastWash(plan), rows)).toEqual([]);
});

test('after three comparisons her own plans come nearer than before', async () => {
  const errors: number[][] = [[], [], [], []];
  for (let painter = 0; painter < 6; painter++) {
    const next = random(40 + painter);
    for (let n = 0; n < 5; n++) next();
    const off = (): number => Math.exp(0.15 * (next() < 0.5 ? -1 : 1) * (0.6 + 0.8 * next()));
    const tubes = Object.fromEntries(chosen.map((paint) => [paint, off()]));
    const lessons: StrengthLesson[] = [];
    for (const [session, found] of errors.entries()) {
      const plan = await planned(strengthCorrections(lessons));
      const rows = painted(plan, tubes, hers, 100 * painter + session);
      const area = rows.reduce((sum, { share }) => sum + share, 0);
      found.push(rows.reduce((sum, row) => sum + row.share * Math.abs(row.difference), 0) / area);
      for (const { paint, times } of seenStrengths(plan, lastWash(plan), rows))
        lessons.push({
          ...{ event: `${session}`, session: `${session}`, paint, name: paint, at: session },
          seems: times > 1 ? 'stronger' : 'weaker',
          planned: plan.optics.find(({ id }) => id === paint)?.corrected ?? 1,
          ...{ perhapsWater: true, by: times },
        });
    }
  }
  const means = errors.map((each) => each.reduce((sum, error) => sum + error, 0) / each.length);
  console.log(`mean |dL*| by session: ${means.map((mean) => mean.toFixed(2)).join(', ')}`);
  expect(means[3]).toBeLessThan(0.9 * (means[0] as number));
});
