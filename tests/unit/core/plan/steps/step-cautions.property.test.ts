import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import type { PlanEdit } from '../../../../../app/core/decisions/plan-edit.ts';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import { pigmentTable } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { planCautions } from '../../../../../app/core/plan/steps/step-cautions.ts';
import type { White, WhiteWay } from '../../../../../app/core/reading/whites/whites.ts';
import { deferral } from '../../../../../app/core/words/cautions.ts';
import { runs } from '../../../../support/more-runs.ts';
import { editOf, editSeeds, keysOf } from '../../../../support/plan/any-edits.ts';
import { anyReading } from '../../../../support/plan/any-reading.ts';
import { editedPlan } from '../../../../support/plan/edited-plan.ts';
import { hills } from '../../../../support/plan/made-pictures.ts';
import { madeReading } from '../../../../support/plan/made-reading.ts';
import { contradictions, untold } from '../../../../support/plan/offered-techniques.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

// Which paints forbid which technique: from memory, by the cautions of the table; the pictures are made up (own).
const white = (way: WhiteWay): White => ({
  at: [0.5, 0.5],
  slot: 0,
  areaMm2: 1,
  shortSideMm: 0.7,
  softShare: 0,
  byHand: false,
  way,
  why: '',
});
const whites = [white('last'), white('mask')];
// Broken up everywhere, so that spots are planned, with whites that come back at the end.
const broken = hills.map((slot) => ({ ...slot, shapes: 90, smallShapes: 80 }));
const reading = { ...madeReading(broken), whites };
const palettes = [
  ['py35-cadmium-yellow', 'pb28-cobalt-blue', 'pbr7-burnt-sienna'],
  ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
  ['py35-cadmium-yellow', 'pb29-ultramarine-blue', 'pr122-quinacridone-magenta'],
] as const;

/** Asked for whether or not it may be. */
const asked: readonly PlanEdit[] = [
  { kind: 'technique', key: 'last-lights/sheet/0', technique: 'scraping' },
  { kind: 'add', id: '4', what: 'splatter', mix: null, after: null },
];

const checked = (facts: PlanFacts, edits: readonly PlanEdit[]) => {
  const plan = { ...editedPlan(facts, edits), optics: facts.paints, palette: [] };
  return [...contradictions(plan), ...untold(plan)];
};

let solved: PlanFacts;
beforeAll(async () => {
  solved = await solvedFacts(reading, paintsNamed(...palettes[1]));
});

test.each(
  [
    ...new Map(
      pigmentTable.map((row) => [`${row.ci} ${row.properties.caution ?? 'none'}`, row]),
    ).values(),
  ].map((row, place) => ({ ...row, place })),
)('a palette with $ci: nothing it forbids, however she asks', ({ properties, place }) => {
  // In the place of one of the paints after the other.
  const n = place % solved.paints.length;
  const paints = solved.paints.map((paint, i) => (i === n ? { ...paint, properties } : paint));
  for (const hairDryer of [false, true]) {
    const facts = { ...solved, paints, weather: { ...roomWeather, hairDryer } };
    expect(checked(facts, [])).toEqual([]);
    expect(checked(facts, asked)).toEqual([]);
  }
});

test('the check sees a blade, a splatter, heat and a finger where they are forbidden', () => {
  const [cadmium] = paintsNamed('py35-cadmium-yellow');
  const plain = editedPlan(solved, []);
  const lights = plain.find('last-lights/sheet/0');
  const spots = plain.find('splatter/sheet/0');
  expect(lights?.touches).toMatchObject([{ technique: 'scraping' }]);
  expect(spots?.technique).toBe('splatter');
  const optics = solved.paints.map((paint) => ({
    ...paint,
    properties: cadmium?.properties as never,
  }));
  const said = contradictions({ ...plain, optics, palette: [] }).join('\n');
  expect(said).toMatch(/last-lights.*blade/);
  expect(said).toMatch(/splatter.*tap the brush/i);
  expect(said).toMatch(/a blade is laid out/);
  expect(untold({ ...plain, optics, palette: [] }).length).toBeGreaterThan(3);
  const rubbed = plain.steps.map((step) =>
    step.kind === 'unmask' ? { ...step, prompt: 'Rub the mask off with a finger.' } : step,
  );
  expect(contradictions({ ...plain, steps: rubbed, optics: [], palette: [] })).toHaveLength(1);
});

test('any plan with any changes keeps to its own cautions', async () => {
  await fc.assert(
    fc.asyncProperty(
      anyReading,
      fc.nat(2),
      fc.boolean(),
      fc.array(editSeeds, { minLength: 4, maxLength: 4 }),
      async ({ slots, borders }, palette, hairDryer, lists) => {
        const made = { ...madeReading(slots, borders), whites };
        const plain = await solvedFacts(made, paintsNamed(...(palettes[palette] ?? [])));
        if (plain.passages.length === 0) return;
        const facts = { ...plain, weather: { ...roomWeather, hairDryer } };
        expect(checked(facts, asked)).toEqual([]);
        const keys = keysOf(facts);
        for (const seeds of lists)
          expect(
            checked(facts, [...seeds.map((seed) => editOf(facts, keys, seed)), ...asked]),
          ).toEqual([]);
      },
    ),
    runs(8, 14),
  );
});

test.each(palettes)(
  'a whole plan with %s, %s, %s: every caution once, whose word counts at the end',
  async (...ids) => {
    const plan = await buildPlan(
      reading,
      { box: ids, chosen: ids, weather: { ...roomWeather, hairDryer: true } },
      noCheckpoint,
    );
    expect([...contradictions(plan), ...untold(plan)]).toEqual([]);
    const told = planCautions(plan);
    expect(new Set(told).size).toBe(told.length);
    expect(told.at(-1)).toBe(deferral);
    for (const { name, properties } of plan.optics) {
      const lines = told.filter((line) => line.toLowerCase().includes(`${name} contains`));
      expect(lines).toHaveLength(properties.caution ? 1 : 0);
    }
    // Every wash dries under the mask, where no dryer goes.
    expect(told.join(' ')).not.toMatch(/cool setting/);
    for (const word of [/latex/, /wash your hands/, /children and animals/])
      expect(told.join(' ')).toMatch(word);
    const blade = plan.steps.some(({ touches }) =>
      touches?.some(({ technique }) => technique === 'scraping'),
    );
    expect(/blade/i.test(told.join(' '))).toBe(blade);
  },
);
