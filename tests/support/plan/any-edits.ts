import fc from 'fast-check';
import type { PlanEdit, Technique } from '../../../app/core/decisions/plan-edit.ts';
import { techniqueChoices } from '../../../app/core/plan/edits/possible-edits.ts';
import type { PlanFacts } from '../../../app/core/plan/plan-facts.ts';
import { editedPlan } from './edited-plan.ts';

const techniques: readonly Technique[] = [
  ...techniqueChoices('wash'),
  ...techniqueChoices('last-lights'),
  'lifting',
];

/** Numbers, made into a change of a plan by the keys it has: some of them gone by then. */
export const editSeeds = fc.array(
  fc.record({
    kind: fc.nat(7),
    one: fc.nat(40),
    other: fc.nat(40),
    load: fc.double({ min: 0.05, max: 40, noNaN: true }),
    parts: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 4 }),
    flag: fc.boolean(),
  }),
  { minLength: 1, maxLength: 6 },
);
export type EditSeed = typeof editSeeds extends fc.Arbitrary<readonly (infer S)[]> ? S : never;

/** Steps as planned, and such as her changes make. */
export function keysOf(facts: PlanFacts): string[] {
  const { keys } = editedPlan(facts, []);
  const washes = keys.filter((key) => key.startsWith('wash/'));
  const made = washes.flatMap((key) => [`${key}/b`, `${key}/add-1`, `${key}/add-2`]);
  return [...keys, ...made, 'lift/sheet/add-3', 'splatter/sheet/add-4', 'accents/sheet/add-5'];
}

export function editOf(facts: PlanFacts, keys: readonly string[], seed: EditSeed): PlanEdit {
  const key = keys[seed.one % keys.length] ?? 'wash/gone/1';
  const after = seed.other === 0 ? null : (keys[seed.other % keys.length] ?? 'dry/gone/1');
  const mixes = facts.passages.flatMap(({ washes }) => washes.flatMap((wash) => wash.mixes));
  const mix = mixes[seed.other % mixes.length]?.id ?? 'gone';
  const what = (['wash', 'wash', 'dry', 'lift', 'splatter', 'accents'] as const)[seed.one % 6];
  switch (seed.kind) {
    case 0:
    case 1:
      return { kind: 'skip', key, skipped: seed.flag || seed.kind === 0 };
    case 2:
      return { kind: 'add', id: `${seed.one % 6}`, what: what ?? 'dry', mix, after };
    case 3:
      return { kind: 'move', key, after };
    case 4:
      return { kind: 'split', key };
    case 5:
      return { kind: 'merge', key };
    case 6:
      return {
        kind: 'technique',
        key,
        technique: techniques[seed.other % techniques.length] ?? 'none',
      };
    default: {
      const parts = seed.parts.map((count, n) => ({
        paint: facts.paints[(n + seed.one) % facts.paints.length]?.id ?? '',
        parts: count,
      }));
      return { kind: 'mix', mix, parts, load: seed.load, unit: 'ml' };
    }
  }
}
