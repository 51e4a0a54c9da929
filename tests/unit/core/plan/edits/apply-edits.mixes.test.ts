import { beforeAll, describe, expect, it } from 'vitest';
import type { PlanEdit } from '../../../../../app/core/decisions/plan-edit.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { editedPlan } from '../../../../support/plan/edited-plan.ts';
import { hillsReading } from '../../../../support/plan/made-pictures.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna');
let facts: PlanFacts;
beforeAll(async () => {
  facts = await solvedFacts(hillsReading(), paints);
});

const hills = (...edits: PlanEdit[]) => editedPlan(facts, edits);

describe('mixes', () => {
  const row = () => {
    const found = hills().mixes.find(({ id }) => id === 'sheet/3/1');
    if (!found) throw new Error('no row');
    return found;
  };

  it('thinner: paler, the row says so, and the shapes miss their value', () => {
    const { id, parts } = row();
    const plan = hills({ kind: 'mix', mix: id, parts, load: 0.2, unit: 'ml' });
    const now = plan.mixes.find((mix) => mix.id === id);
    expect(now?.expected[0]).toBeGreaterThan(row().expected[0] + 8);
    expect(now).toMatchObject({ load: 0.2, consistency: 'tea' });
    expect(plan.find('wash/sheet/3')?.consequence).toMatch(/lighter than planned/);
  });

  it('other parts are another puddle; paints that are not there wait', () => {
    const { id, load, puddle } = row();
    const parts = [{ paint: 'pbr7-burnt-sienna', parts: 5 }];
    const plan = hills({ kind: 'mix', mix: id, parts, load, unit: 'ml' });
    const now = plan.mixes.find((mix) => mix.id === id);
    expect(now?.parts).toEqual(parts);
    const shared = hills().mixes.filter((mix) => mix.puddle === puddle).length > 1;
    if (shared) expect(now?.puddle).not.toBe(puddle);
    const gone = [{ paint: 'no-such-paint', parts: 1 }];
    // Laid once more, so the last digits of the colours are not the same.
    const waiting = hills({ kind: 'mix', mix: id, parts: gone, load, unit: 'ml' }).mixes;
    for (const [n, mix] of hills().mixes.entries()) {
      const { parts, load, puddle, expected } = waiting[n] ?? mix;
      expect({ parts, load, puddle }).toEqual({
        parts: mix.parts,
        load: mix.load,
        puddle: mix.puddle,
      });
      for (const i of [0, 1, 2] as const) expect(expected[i]).toBeCloseTo(mix.expected[i], 9);
    }
    expect(waiting).toHaveLength(hills().mixes.length);
  });

  it('one kept since before paints had a strength is told in volumes, as strong as it was', () => {
    const { id } = row();
    const former = [
      { paint: 'pb29-ultramarine-blue', parts: 3 },
      { paint: 'pbr7-burnt-sienna', parts: 1 },
    ];
    const now = hills({ kind: 'mix', mix: id, parts: former, load: 4 }).mixes.find(
      (mix) => mix.id === id,
    );
    const strengthIn = (paint: string) => paints.find((each) => each.id === paint)?.strength ?? 0;
    const loads = (now?.parts ?? []).map(({ paint, parts }) => parts * strengthIn(paint));
    const sum = (now?.parts ?? []).reduce((all, part) => all + part.parts, 0);
    const all = loads.reduce((one, two) => one + two, 0);
    // Four loads still; three quarters of them blue, as near as whole parts come.
    expect(((now?.load ?? 0) * all) / sum).toBeCloseTo(4, 9);
    expect(Math.abs((loads[0] ?? 0) / all - 0.75)).toBeLessThan(0.05);
    expect(sum).toBeLessThanOrEqual(8);
  });

  it('too many paints are told', () => {
    const { id, load } = row();
    const parts = paints.map((paint) => ({ paint: paint.id, parts: 3 }));
    const plan = hills({ kind: 'mix', mix: id, parts, load, unit: 'ml' });
    expect(plan.find('wash/sheet/3')?.consequence).toMatch(/So many parts/);
  });
});
