import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { planDifferences } from '../../../../app/core/plan/plan-differences.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const reading = madeReading(
  tableOf(
    [92, 62, 34],
    [
      [4, 36],
      [-2, -22],
    ],
  ),
);
const noPause = async (): Promise<void> => {};
const theirs = await buildPlan(
  reading,
  { chosen: ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'] },
  noPause,
);

/** The same plan with every colour of its last sheet changed. */
const withLast = (change: (lab: Lab, slot: number) => Lab): WashPlan => ({
  ...theirs,
  steps: theirs.steps.map((step, i) =>
    i === theirs.steps.length - 1 ? { ...step, after: step.after.map(change) } : step,
  ),
});

test('a plan does not differ from itself', () => {
  expect(planDifferences(theirs, theirs, reading.families)).toEqual([
    'The values are the same.',
    'The colours come out as good as the same.',
  ]);
});

test('slots that are alike by passage, band and family are each compared with their own', () => {
  const [first, ...others] = theirs.slots;
  if (!first) throw new Error('no slot');
  const twice: WashPlan = {
    ...theirs,
    slots: [first, ...others, { ...first, share: 0.2 }, { ...first, share: 0.2, reserve: true }],
    steps: theirs.steps.map((step) => ({
      ...step,
      after: [...step.after, [20, 40, 0] as Lab, [95, 0, 0] as Lab],
    })),
  };
  expect(planDifferences(twice, twice, reading.families)).toHaveLength(2);
});

test('darks that end higher are said with both values', () => {
  const lifted = withLast(([l, a, b]) => [Math.max(l, 45), a, b]);
  // L* 45 is Munsell value 4.4 (ASTM D1535).
  expect(planDifferences(theirs, lifted, reading.families)[0]).toMatch(
    /^The values are the same but for the darks: they end at value 4\.4 instead of \d\.\d\.$/,
  );
});

test('a family whose colour is seen to differ is named with how; others are not', () => {
  const [first, second] = reading.families;
  const greyed = withLast(([l, a, b], slot) =>
    theirs.slots[slot]?.family === first?.id ? [l, a / 3, b / 3] : [l, a, b],
  );
  const said = planDifferences(theirs, greyed, reading.families).join(' ');
  expect(said).toContain(`Duller than in the plan you were given: the ${first?.name}.`);
  expect(said).not.toContain(second?.name ?? '');
});

test('one wash more is counted', () => {
  const [mix] = theirs.mixes.filter(({ parts }) => parts.length > 0);
  if (!mix) throw new Error('no mix');
  const most = Math.max(...theirs.mixes.map(({ wash }) => wash));
  const more = { ...theirs, mixes: [...theirs.mixes, { ...mix, wash: most + 1 }] };
  expect(planDifferences(theirs, more, reading.families)).toContain('It takes one wash more.');
  expect(planDifferences(more, theirs, reading.families)).toContain('It takes one wash fewer.');
});

test('a real plan with other paints: values are told, and only sentences that end', async () => {
  const yours = await buildPlan(
    reading,
    { chosen: ['pr108-cadmium-red', 'pb28-cobalt-blue'] },
    noPause,
  );
  const said = planDifferences(theirs, yours, reading.families);
  expect(said.length).toBeGreaterThan(1);
  expect(said[0]).toMatch(/^The values are the same/);
  for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/);
});
