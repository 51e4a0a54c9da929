import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { PlanEdit } from '../../../../../app/core/decisions/plan-edit.ts';
import { maxWashes } from '../../../../../app/core/drying/paper-choice.ts';
import { defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { runs } from '../../../../support/more-runs.ts';
import { editOf, editSeeds, keysOf } from '../../../../support/plan/any-edits.ts';
import { anyReading } from '../../../../support/plan/any-reading.ts';
import { editedPlan } from '../../../../support/plan/edited-plan.ts';
import {
  hillsReading,
  mistReading,
  oneColour,
  roofsReading,
  twoPassages,
} from '../../../../support/plan/made-pictures.ts';
import { madeReading } from '../../../../support/plan/made-reading.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

// Palettes with lifting, staining and opaque paints.
const palettes = [
  ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
  ['py35-cadmium-yellow', 'pb27-prussian-blue', 'pr122-quinacridone-magenta'],
  ['pg17-chromium-oxide', 'pbr7-burnt-sienna'],
] as const;

let pictures: readonly PlanFacts[] = [];
let keys: readonly string[][] = [];
beforeAll(async () => {
  const readings = [hillsReading(), mistReading(), roofsReading(), twoPassages(), oneColour()];
  pictures = await Promise.all(
    readings.map((reading, n) => solvedFacts(reading, paintsNamed(...(palettes[n % 2] ?? [])))),
  );
  keys = pictures.map(keysOf);
});

/** Sheets that lighten without a word, whites that are not paper, colours that are none. */
function faultsOfSheets(facts: PlanFacts, steps: readonly Step[]): string[] {
  return steps.flatMap(({ key, after, consequence, alsoHappens = [] }, n) =>
    after.flatMap((lab, i) => {
      const before = steps[n - 1]?.after[i] ?? defaultPaperLab;
      const lighter =
        lab[0] > before[0] + 1e-6 &&
        ![consequence, ...alsoHappens].join().includes('lighter and chalky');
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

/** A sound plan, every broken rule said at its step and nothing else said, the same each time. */
function expectHonest(facts: PlanFacts, edits: readonly PlanEdit[]): void {
  const plan = editedPlan(facts, edits);
  const said = new Map<string, Set<string>>();
  for (const { step, sentence } of plan.broken) {
    said.set(step, (said.get(step) ?? new Set()).add(words(sentence)));
  }
  const sayings = plan.steps.map(({ key, consequence, alsoHappens = [] }) => [
    key,
    [consequence ?? '', ...alsoHappens].map(words).join(' '),
  ]);
  const meant = plan.keys.map((key) => [key, [...(said.get(key) ?? [])].join(' ')]);
  expect(sayings).toEqual(meant);
  expect([...said.keys()].filter((key) => !plan.keys.includes(key))).toEqual([]);
  expect(plan.broken.filter(({ rule }) => oursToMend.includes(rule))).toEqual([]);
  expect(faultsOfSheets(facts, plan.steps)).toEqual([]);
  expect(plan.mixes.every(({ expected }) => expected.every(Number.isFinite))).toBe(true);
  const { steps, mixes, leftOut } = editedPlan(facts, edits);
  expect({ steps, mixes, leftOut }).toEqual({
    steps: plan.steps,
    mixes: plan.mixes,
    leftOut: plan.leftOut,
  });
}

it('whatever she changes, what will happen is said where it does', () => {
  fc.assert(
    fc.property(fc.nat(4), editSeeds, (n, seeds) => {
      const facts = pictures[n] as PlanFacts;
      expectHonest(
        facts,
        seeds.map((seed) => editOf(facts, keys[n] ?? [], seed)),
      );
    }),
    runs(60, 5),
  );
});

it('so in any reading, with any palette', async () => {
  await fc.assert(
    fc.asyncProperty(
      anyReading,
      fc.nat(2),
      fc.constantFrom(190, 300, 640),
      fc.array(editSeeds, { minLength: 4, maxLength: 4 }),
      async ({ slots, borders }, palette, gsm, lists) => {
        const paper = { gsm, fibre: 'cotton' } as const;
        const paints = paintsNamed(...(palettes[palette] ?? []));
        const reading = madeReading(slots, borders);
        const solved = await solvedFacts(reading, paints, Math.min(4, maxWashes(paper)));
        const facts = { ...solved, paper };
        if (facts.passages.length === 0) return;
        expect(editedPlan(facts, []).broken).toEqual([]);
        const own = keysOf(facts);
        for (const seeds of lists) {
          expectHonest(
            facts,
            seeds.map((seed) => editOf(facts, own, seed)),
          );
        }
      },
    ),
    runs(4, 7),
  );
});
