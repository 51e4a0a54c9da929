import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { roomWeather, type Weather } from '../../../../../app/core/drying/weather.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { shapeWarning } from '../../../../../app/core/plan/reach/colour-warnings.ts';
import { layersWarning, whitesWarning } from '../../../../../app/core/plan/reach/reach-warnings.ts';
import type { Reading } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import type { White, WhiteWay } from '../../../../../app/core/reading/whites/whites.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { bandWord } from '../../../../../app/core/words/reading-words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

// Plans are made here: on a busy machine some seconds each.
const chosen = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const hills = tableOf(
  [97, 74, 52, 28],
  [
    [-10, 20],
    [2, -18],
  ],
);
const plain = madeReading(hills);
const codes = async (reading: Reading, wishes = {}): Promise<string[]> =>
  (await buildPlan(reading, { chosen, ...wishes }, noCheckpoint)).warnings.map(({ code }) => code);
const onSheet = (widthMm: number, heightMm: number, of = plain): Reading => ({
  ...of,
  sheet: { widthMm, heightMm },
});

const facts = (more: Partial<PlanFacts> = {}): PlanFacts => ({
  reading: plain,
  slots: plain.slots,
  reserves: plain.reserves,
  paints: [],
  passages: [],
  weather: roomWeather,
  paper: { gsm: 300, fibre: 'cotton' },
  ...more,
});
const wash = (n: number, technique: Step['technique'], slots: number[]): Step => ({
  key: `wash/sheet/${n}`,
  n,
  kind: 'wash',
  title: 'First wash',
  prompt: '',
  watch: '',
  bands: [],
  families: [],
  slots,
  mixes: [],
  paper: technique === 'wet-in-wet' ? 'shiny' : 'bone dry',
  technique,
  soften: '',
  paintMinutes: [4, 11],
  shineMinutes: [0, 12],
  dryMinutes: [20, 60],
  cautions: [],
  rules: [],
  after: [],
});

describe('layers', () => {
  const over = (count: number): Step[] =>
    Array.from({ length: count }, (_, i) => wash(i + 1, 'wet on dry', [2, 3]));
  const paper = (gsm: number, fibre: 'cotton' | 'cellulose') => facts({ paper: { gsm, fibre } });

  // Washes each paper bears at most: common practice, no source.
  test.each([
    [190, 'cellulose', 2],
    [300, 'cellulose', 3],
    [300, 'cotton', 6],
    [425, 'cotton', 6],
    [150, 'cellulose', 2],
  ] as const)('%s g/m2 %s bears %s', (gsm, fibre, most) => {
    expect(layersWarning(paper(gsm, fibre), over(most))).toBeNull();
    const told = layersWarning(paper(gsm, fibre), over(most + 1));
    expect(told?.code).toBe('too-many-layers');
    expect(words(told?.text)).toMatch(
      new RegExp(`^${most + 1} washes .*${fibre}, ${gsm} g/m².*heavier`),
    );
  });

  test('only washes over the very same place count', () => {
    const apart = [wash(1, 'wet on dry', [2]), wash(2, 'wet on dry', [3]), wash(3, 'glaze', [4])];
    expect(layersWarning(paper(190, 'cellulose'), apart)).toBeNull();
  });
});

describe('open time of a wash', () => {
  const hot: Weather = { celsius: 37, humidity: 20, airSpeed: 3 };
  const soft = [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.9 }));
  const wet = madeReading(hills, soft);

  test('a quarter sheet in a room is no trouble, dry or wet', async () => {
    expect(await codes(plain)).not.toContain('wash-too-large');
    expect(await codes(wet)).not.toContain('wash-too-large');
  });

  test('a full sheet is too large for a dry edge, and a quarter sheet in hot wind', async () => {
    for (const [reading, wishes] of [
      [onSheet(762, 559), {}],
      [plain, { weather: hot }],
    ] as const) {
      const { warnings } = await buildPlan(reading, { chosen, ...wishes }, noCheckpoint);
      const told = warnings.find(({ code }) => code === 'wash-too-large');
      expect(words(told?.text)).toMatch(
        /First wash: too large.* min.*Split it.*wet the sheet first/,
      );
      expect(told?.step).toMatch(/^wash\/\w+\/1$/);
    }
  });

  test('on wet paper a full sheet in hot wind is too large, and there is more to do than to wet it', async () => {
    const reading = onSheet(762, 559, wet);
    const { warnings } = await buildPlan(reading, { chosen, weather: hot }, noCheckpoint);
    const told = warnings.find(({ code }) => code === 'wash-too-large');
    expect(words(told?.text)).toMatch(/shines for.*hard border.*smaller sheet.*both sides/);
  });
});

describe('whites', () => {
  const white = (way: WhiteWay, shortSideMm: number): White => ({
    at: [0.5, 0.5],
    slot: 0,
    areaMm2: shortSideMm ** 2,
    shortSideMm,
    softShare: 0,
    byHand: false,
    way,
    why: '',
  });
  const told = (technique: Step['technique'], ...whites: White[]) =>
    words(
      whitesWarning(facts({ reading: { ...plain, whites } }), [wash(1, technique, [2, 3])])?.text,
    );

  test('large enough for a brush: nothing; on dry paper 1 mm is enough, on wet 3', () => {
    expect(told('wet on dry', white('round', 1.5), white('round', 30))).toBe('');
    expect(told('wet-in-wet', white('round', 3.5))).toBe('');
    expect(told('wet-in-wet')).toBe('');
  });

  test('to be painted round all the same: how many, and the three ways out', () => {
    expect(told('wet-in-wet', white('round', 2), white('round', 1.5), white('mask', 2))).toMatch(
      /^2 whites to be painted round are too small.*Mask them.*opaque white.*larger sheet/,
    );
    expect(told('wet on dry', white('round', 0.5))).toMatch(/^One white .* is too small.*Mask it/);
  });

  test('masked or brought back: how many are kept which way', () => {
    expect(told('wet-in-wet', white('mask', 2), white('mask', 1), white('last', 0.5))).toBe(
      '3 whites are too small to paint round on this sheet: 2 are masked, 1 comes back at the end. To paint round them take a larger sheet.',
    );
    expect(told('wet-in-wet', white('mask', 2))).toMatch(/this sheet: 1 is masked\. To/);
    expect(told('wet-in-wet', white('last', 2), white('last', 1))).toMatch(
      /this sheet: 2 come back at the end\. To/,
    );
    // One that is masked though a brush could go round it is her choice.
    expect(told('wet on dry', white('mask', 2))).toBe('');
  });

  test('not listed, as in older readings: those a wet wash drowns unless they are masked', () => {
    const reserves = { share: 0.1, count: 3, smallCount: 2 };
    const wet = [wash(1, 'wet-in-wet', [2, 3])];
    expect(words(whitesWarning(facts({ reserves }), wet)?.text)).toMatch(/^2 whites under 3 mm/);
    const mask = { ...wash(0, 'masking', []), kind: 'mask' } as const;
    expect(whitesWarning(facts({ reserves }), [mask, ...wet])).toBeNull();
    expect(whitesWarning(facts({ reserves }), [wash(1, 'wet on dry', [2])])).toBeNull();
  });
});

describe('shapes that miss their value', () => {
  const painted = plain.slots.map((slot, i): Slot => ({ ...slot, reserve: i < 2 }));
  const after = (offBy: Readonly<Record<number, number>>): Lab[] =>
    painted.map(({ target: [l, a, b] }, i) => [l + (offBy[i] ?? 0), a, b]);
  const told = (offBy: Record<number, number>, reached = 20, darksTold = false) =>
    words(shapeWarning(facts({ slots: painted }), after(offBy), reached, darksTold)?.text);

  test('within 5 L*, and whites, are well', () => {
    expect(told({ 2: 5, 3: -5, 0: -30 })).toBe('');
  });

  test('named by value and colour, with how far, and why', () => {
    expect(told({ 3: 9, 5: -12 })).toMatch(
      /the light colour 2 \d\.\d too light, the mid colour 2 \d\.\d too dark .*share a wash/,
    );
  });

  test('beyond the darkest paint: another word, and none where the darks were told already', () => {
    const dark = painted[7]?.target[0] ?? 0;
    expect(told({ 7: 9 }, dark + 9)).toMatch(/dark colour 2 .*deeper paint/);
    expect(told({ 7: 9 }, dark + 9, true)).toBe('');
    expect(told({ 7: 9, 3: 9 }, dark + 9, true)).toMatch(/light colour 2/);
  });

  test('however the sheet comes out: said exactly where a shape misses its value (seeded)', () => {
    const off = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), {
      minLength: painted.length,
      maxLength: painted.length,
    });
    fc.assert(
      fc.property(off, fc.integer({ min: 0, max: 60 }), fc.boolean(), (by, reached, darksTold) => {
        const missed = painted.filter(({ reserve, target: [lightness] }, i) => {
          const got = lightness + (by[i] ?? 0);
          const ofDarks = darksTold && got > lightness && lightness < reached;
          return !reserve && Math.abs(got - lightness) > 5 && !ofDarks;
        });
        const text = told(Object.fromEntries(by.entries()), reached, darksTold);
        expect(text !== '').toBe(missed.length > 0);
        for (const { band, family } of missed.length <= 3 ? missed : [])
          expect(text).toContain(`${bandWord(band, 4)} colour ${family}`);
      }),
      { numRuns: 1000, seed: 5 },
    );
  });

  test('one wash for three values: whatever it misses is said', async () => {
    const plan = await buildPlan(plain, { chosen, washes: 1 }, noCheckpoint);
    const last = plan.steps.at(-1)?.after ?? [];
    const missed = plan.slots.filter(
      ({ reserve, target }, i) => !reserve && Math.abs((last[i]?.[0] ?? 0) - target[0]) > 5,
    );
    const said = plan.warnings.some(({ code }) => code === 'shape-out-of-reach');
    expect(said).toBe(missed.length > 0);
    expect(missed.length).toBeGreaterThan(0);
  });
});

test('the most important stands first: darks before paper and open time', async () => {
  const reading = onSheet(762, 559);
  const found = await codes(reading, {
    chosen: ['pr254-pyrrole-red', 'py74-arylide-yellow'],
    paper: { gsm: 190, fibre: 'cellulose' },
    washes: 3,
  });
  expect(found[0]).toBe('dark-out-of-reach');
  expect(found.slice(-2)).toEqual(['too-many-layers', 'wash-too-large']);
});
