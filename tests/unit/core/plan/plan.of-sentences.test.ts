import { expect, test } from 'vitest';
import { listMaterials } from '../../../../app/core/plan/list-materials.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { planCautions } from '../../../../app/core/plan/steps/step-cautions.ts';
import { cautionsDue, choosePrompt } from '../../../../app/core/session/choose-cue.ts';
import { words } from '../../../../app/core/words/plan/words.ts';
import { planJson } from '../../../../app/tools/plan/plan-json.ts';
import kept from '../../../fixtures/plan-of-sentences.json';
import { readings } from '../../../support/plan/built-plans.ts';
import { told } from '../../../support/plan/told.ts';

// A plan as it lies in a store since before plans said codes, and what the code of its time printed of it (own).

const plan = kept.plan as unknown as WashPlan;

test('a plan of ready sentences says them as they are', () => {
  expect(plan.engine).toBe('plan-15');
  expect(told(plan)).toEqual(plan);
  expect(planCautions(plan)).toEqual(kept.cautions);
  expect(listMaterials(plan)).toEqual(kept.materials);
  expect(plan.leftOut?.map(({ title }) => words(title))).toEqual(
    kept.leftOut.map(({ title }) => title),
  );
});

test('it is printed as it was', () => {
  const json = planJson(readings['seed heads'], plan, false);
  expect(json.palette.map(({ why }) => why)).toEqual(kept.printed.palette);
  expect(json).toMatchObject({ washesWhy: kept.printed.washesWhy, fit: kept.printed.fit });
  expect(json.steps).toMatchObject(kept.printed.steps);
});

test('at the easel its prompts are read, and its word on a dryer gives way to hers', () => {
  const [first] = plan.steps;
  const state = {
    phase: 'painting',
    timer: null,
    weather: { celsius: 20, humidity: 50, airSpeed: 0.15 },
  };
  expect(words(choosePrompt(first as never, state as never, { shine: null } as never))).toBe(
    kept.printed.steps[0]?.prompt,
  );
  const steps = [
    { kind: 'dry' as const, cautions: ['Hair dryer only once the shine has gone.', 'Mind.'] },
  ];
  expect(cautionsDue(steps, 0, { hairDryer: false })).toEqual(['Mind.']);
  expect(cautionsDue(steps, 0, { hairDryer: true }).map(words)).toEqual([
    'Mind.',
    words({ say: 'caution/dryer' }),
  ]);
});
