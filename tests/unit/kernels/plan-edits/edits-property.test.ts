import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import { techniqueChoices } from '../../../../app/model/technique-choices.ts';
import type { Step, Technique } from '../../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../../../../workers/kernels/optics/default-paper.ts';
import type { PlanFacts } from '../../../../workers/kernels/plan/plan-facts.ts';
import { editedPlan } from './edited-plan.ts';
import {
  hillsReading,
  mistReading,
  oneColour,
  roofsReading,
  twoPassages,
} from './made-pictures.ts';
import { paintsNamed, solvedFacts } from './solved-facts.ts';

// A palette with lifting, staining and opaque paints.
const palettes = [
  ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
  ['py35-cadmium-yellow', 'pb27-prussian-blue', 'pr122-quinacridone-magenta'],
] as const;

let pictures: readonly PlanFacts[] = [];
let keys: readonly string[][] = [];
beforeAll(async () => {
  const readings = [hillsReading(), mistReading(), roofsReading(), twoPassages(), oneColour()];
  pictures = await Promise.all(
    readings.map((reading, n) => solvedFacts(reading, paintsNamed(...(palettes[n % 2] ?? [])))),
  );
  keys = pictures.map(keysOf);
}, 60_000);

const techniques: readonly Technique[] = [
  ...techniqueChoices('wash'),
  ...techniqueChoices('last-lights'),
  'lifting',
];

/** Numbers, made into a change of a plan by the keys it has: some of them gone by then. */
const seeds = fc.array(
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
type Seed = typeof seeds extends fc.Arbitrary<readonly (infer S)[]> ? S : never;

/** Steps as planned, and such as her changes make. */
function keysOf(facts: PlanFacts): string[] {
  const { keys } = editedPlan(facts, []);
  const washes = keys.filter((key) => key.startsWith('wash/'));
  const made = washes.flatMap((key) => [`${key}/b`, `${key}/add-1`, `${key}/add-2`]);
  return [...keys, ...made, 'lift/sheet/add-3', 'splatter/sheet/add-4', 'accents/sheet/add-5'];
}

function editOf(facts: PlanFacts, keys: readonly string[], seed: Seed): PlanEdit {
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
      return { kind: 'mix', mix, parts, load: seed.load };
    }
  }
}

/** Sheets that lighten without a word, whites that are not paper, colours that are none. */
function faultsOfSheets(facts: PlanFacts, steps: readonly Step[]): string[] {
  return steps.flatMap(({ key, after, consequence }, n) =>
    after.flatMap((lab, i) => {
      const before = steps[n - 1]?.after[i] ?? defaultPaperLab;
      const lighter = lab[0] > before[0] + 1e-6 && !consequence?.includes('lighter and chalky');
      const painted = facts.slots[i]?.reserve && lab[0] !== defaultPaperLab[0];
      const good = lab.every(Number.isFinite) && !lighter && !painted;
      return good ? [] : [`${key} slot ${i}: ${lab.join(' ')}`];
    }),
  );
}

const oursToMend = ['order', 'R15', 'R7', 'mix', 'keys', 'R14', 'R8, R17', 'white'];

it('unchanged, no rule is broken', () => {
  for (const facts of pictures) expect(editedPlan(facts, []).broken).toEqual([]);
});

it('whatever she changes: a plan, every broken rule said at its step, nothing else said', () => {
  fc.assert(
    fc.property(fc.nat(4), seeds, (n, made) => {
      const facts = pictures[n] as PlanFacts;
      const edits = made.map((seed) => editOf(facts, keys[n] ?? [], seed));
      const plan = editedPlan(facts, edits);
      const said = new Map<string, Set<string>>();
      for (const { step, sentence } of plan.broken) {
        said.set(step, (said.get(step) ?? new Set()).add(sentence));
      }
      const sayings = plan.steps.map(({ key, consequence }) => [key, consequence ?? '']);
      const meant = plan.keys.map((key) => [key, [...(said.get(key) ?? [])].join(' ')]);
      expect(sayings).toEqual(meant);
      expect([...said.keys()].filter((key) => !plan.keys.includes(key))).toEqual([]);
      expect(plan.broken.filter(({ rule }) => oursToMend.includes(rule))).toEqual([]);
      expect(faultsOfSheets(facts, plan.steps)).toEqual([]);
      expect(plan.mixes.every(({ expected }) => expected.every(Number.isFinite))).toBe(true);
      expect(editedPlan(facts, edits)).toMatchObject({ steps: plan.steps, mixes: plan.mixes });
    }),
    { numRuns: 200, seed: 5 },
  );
}, 60_000);
