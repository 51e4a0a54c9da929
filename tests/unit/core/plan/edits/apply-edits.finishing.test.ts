import { beforeAll, describe, expect, test } from 'vitest';
import type { Technique } from '../../../../../app/core/decisions/plan-edit.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { editedPlan } from '../../../../support/plan/edited-plan.ts';
import { hillsReading } from '../../../../support/plan/made-pictures.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

let facts: PlanFacts;
beforeAll(async () => {
  facts = await solvedFacts(
    hillsReading(),
    paintsNamed('py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'),
  );
});

/** The darkest touches as planned, and painted in another way. */
const accents = (technique?: Technique) =>
  editedPlan(
    facts,
    technique ? [{ kind: 'technique', key: 'accents/sheet/0', technique }] : [],
  ).find('accents/sheet/0');

describe('the darkest touches painted another way', () => {
  test('have that technique, and its words', () => {
    const planned = accents();
    expect(planned?.technique).toBe('dry brush');
    const wet = accents('wet on dry');
    expect(wet?.technique).toBe('wet on dry');
    expect(wet?.prompt).toMatch(/point of a small brush and fluid dark paint/);
    expect(wet?.prompt).not.toBe(planned?.prompt);
  });

  test('in the way they are planned are as they were, their words too', () => {
    expect(accents('dry brush')).toEqual(accents());
  });

  test('in a way that makes no sense for them are as they were', () => {
    expect(accents('wet-in-wet')).toEqual(accents());
  });
});
