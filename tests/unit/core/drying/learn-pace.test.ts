import { describe, expect, test } from 'vitest';
import { parseKeptAir } from '../../../../app/core/drying/conditions.ts';
import { estimateDrying, modelRange } from '../../../../app/core/drying/estimate-drying.ts';
import {
  applyPace,
  geometricMiddle,
  type Lesson,
  learnPace,
  teaches,
} from '../../../../app/core/drying/learn-pace.ts';
import {
  chosenOf,
  figureOf,
  roomWeather,
  type Weather,
  warmths,
} from '../../../../app/core/drying/weather.ts';
import { waterKindOf } from '../../../../app/core/plan/water-kind.ts';
import {
  airInWords,
  boneDrySign,
  leaveIt,
  paceInWords,
} from '../../../../app/core/words/drying/drying-words.ts';

test('without a tap, or where there is nothing to wait for, the range stays as it was', () => {
  const pace = { factor: 1.4, taps: 3, scatter: 0.2 };
  expect(applyPace([2, 10], [3, 8], { ...pace, taps: 0 })).toEqual([2, 10]);
  expect(applyPace([2, 10], [0, 0], pace)).toEqual([2, 10]);
  expect(applyPace([0, 0], [3, 8], pace)).toEqual([0, 0]);
  expect(applyPace([2, 10], [3, 8], pace)).not.toEqual([2, 10]);
});

test('her pace in a sentence', () => {
  const pace = (factor: number, taps: number) => ({ factor, taps, scatter: 0.2 });
  expect(paceInWords('shine', 'wash', pace(1 / 1.3, 4))).toBe(
    'First washes on dry paper lose their shine 1.3 times as fast as reckoned, from 4 taps.',
  );
  expect(paceInWords('dry', 'wetInWet', pace(1.5, 1))).toBe(
    'Wet-in-wet washes get bone dry in 1.5 times the time reckoned, from 1 tap.',
  );
  expect(paceInWords('dry', 'glaze', pace(1.02, 2))).toMatch(/bone dry as reckoned/);
  expect(paceInWords('dry', 'glaze', pace(1, 0))).toBeNull();
});

test('in humid or cold air the sign is its colour, not the hand', () => {
  expect(boneDrySign(roomWeather)).toMatch(/back of the hand/);
  for (const weather of [
    { ...roomWeather, humidity: 86 },
    { ...roomWeather, celsius: 7 },
  ])
    expect(boneDrySign(weather)).toMatch(/takes hours.*tells nothing.*pale as a dry scrap/);
  expect(leaveIt).toMatch(/leave it/);
});

test('words and figures of the air', () => {
  expect(figureOf(warmths, 'warm')).toBe(25);
  expect(chosenOf(warmths, 25)).toBe('warm');
  expect(chosenOf(warmths, 24.9)).toBeNull();
  expect(airInWords({ ...roomWeather, sunWatts: 600, hairDryer: true, backing: 'wet' })).toBe(
    '20°C (68°F), 50 % humidity, still air (0.15 m/s), sun, wet underneath, hair dryer',
  );
});

test('kept air comes back; what is broken in it counts as usual', () => {
  const air = { schema: 1, weather: { ...roomWeather, celsius: 7, backing: 'block' } };
  expect(parseKeptAir({ ...air, paper: { gsm: 640, fibre: 'cellulose' } })).toMatchObject({
    weather: { celsius: 7, humidity: 50, backing: 'block', hairDryer: false },
    paper: { gsm: 640, fibre: 'cellulose' },
  });
  expect(parseKeptAir({ schema: 1, weather: { celsius: 'warm' }, paper: 3 })).toMatchObject({
    weather: { celsius: 20, humidity: 50, backing: 'board' },
    paper: { gsm: 300, fibre: 'cotton' },
  });
  for (const none of [null, undefined, 3, 'x', {}, { schema: 2, weather: {} }])
    expect(parseKeptAir(none)).toBeNull();
});

test.each([
  ['wash/sheet/1', 'wash', 'wet on dry', 'wash'],
  ['wash/subject/2', 'wash', 'wet on dry', 'stroke'],
  ['wash/sheet/2', 'wash', 'glaze', 'glaze'],
  ['wash/sheet/1', 'wash', 'wet-in-wet', 'wetInWet'],
  ['accents/sheet/0', 'accents', 'dry brush', 'accents'],
  ['last-lights/sheet/0', 'last-lights', 'opaque white', 'accents'],
  ['lift/sheet/0', 'lift', 'lifting', 'lift'],
  ['mask/sheet/0', 'mask', 'masking', null],
  ['dry/sheet/1', 'dry', 'none', null],
] as const)('%s, %s, %s puts down the water of: %s', (key, kind, technique, water) => {
  expect(waterKindOf({ key, kind, technique })).toBe(water);
});

const what = {
  clock: 'dry',
  paper: { gsm: 300, fibre: 'cotton' },
  wash: 'wash',
} as const;
const tap = (ratio: number): Lesson => ({ kind: 'tap', ...what, ratio, from: 'a' });
const factor = (...ratios: number[]): number => learnPace(ratios.map(tap), what).factor;

test('one tap moves the factor half way on a ratio scale, two that agree are believed', () => {
  expect(factor()).toBe(1);
  expect(factor(4)).toBeCloseTo(2, 9);
  expect(factor(2, 2)).toBeCloseTo(2, 9);
  expect(factor(0.5, 0.5)).toBeCloseTo(0.5, 9);
});

test('one odd evening hardly counts, and the factor stays within reason', () => {
  expect(factor(1.2, 1.25, 6, 1.2, 1.25)).toBeCloseTo(Math.sqrt(1.2 * 1.25), 9);
  expect(factor(5, 5, 5, 5)).toBe(3);
  expect(factor(0.2, 0.2, 0.2)).toBe(0.3);
});

test('what she tapped through, or slept through, teaches nothing', () => {
  expect(factor(0.001, 40, Number.NaN)).toBe(1);
  expect(learnPace([tap(0.001)], what).taps).toBe(0);
  expect(teaches(1)).toBe(true);
});

test('each clock, paper and kind of wash learns for itself', () => {
  const lessons = [tap(2), tap(2)];
  expect(learnPace(lessons, { ...what, clock: 'shine' }).taps).toBe(0);
  expect(learnPace(lessons, { ...what, wash: 'glaze' }).taps).toBe(0);
  expect(learnPace(lessons, { ...what, paper: { gsm: 640, fibre: 'cotton' } }).taps).toBe(0);
  expect(learnPace(lessons, { ...what, paper: { gsm: 300, fibre: 'cellulose' } }).taps).toBe(0);
  expect(learnPace(lessons, { ...what, paper: { gsm: 300, fibre: 'cotton' } }).taps).toBe(2);
});

test('forgetting one clock leaves the other', () => {
  const shine = { ...what, clock: 'shine' } as const;
  const lessons: Lesson[] = [
    tap(2),
    { ...tap(2), clock: 'shine' },
    { kind: 'forget', ...what },
    tap(0.81),
  ];
  expect(learnPace(lessons, what)).toMatchObject({ taps: 1 });
  expect(learnPace(lessons, what).factor).toBeCloseTo(0.9, 9);
  expect(learnPace(lessons, shine).taps).toBe(1);
});

test('scattered taps leave a wider range than taps that agree', () => {
  const even = learnPace([1, 1, 1, 1, 1, 1].map(tap), what);
  const odd = learnPace([0.5, 2, 0.5, 2, 0.5, 2].map(tap), what);
  expect(odd.scatter).toBeGreaterThan(2 * even.scatter);
});

/** Evenings that differ, so that what is learned is her pace and not one evening. */
const evenings: readonly Weather[] = [
  { celsius: 20, humidity: 50, airSpeed: 0.15 },
  { celsius: 24, humidity: 40, airSpeed: 0.2 },
  { celsius: 17, humidity: 65, airSpeed: 0.15 },
  { celsius: 22, humidity: 55, airSpeed: 0.5 },
  { celsius: 27, humidity: 60, airSpeed: 0.15 },
  { celsius: 19, humidity: 45, airSpeed: 0.3 },
  { celsius: 21, humidity: 50, airSpeed: 0.15 },
];
const paper = { gsm: 300, fibre: 'cotton' } as const;
const conditions = (weather: Weather) => ({
  waterGramsPerSquareMetre: 60,
  weather,
  paperGsm: paper.gsm,
});
const models = evenings.map((weather) => modelRange(conditions(weather)));
const untaught = estimateDrying(conditions(evenings.at(-1) as Weather));

/** Mulberry32 and Box-Muller: seeded normal numbers (from memory). */
function normals(seed: number): () => number {
  let a = seed;
  const random = (): number => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const painters = 200;
const taps = 6;
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function simulate(clock: 'shine' | 'dry', factor: number, scatter: number) {
  const minutes = clock === 'shine' ? 'shineMinutes' : 'dryMinutes';
  const what = { clock, paper, wash: 'wash' } as const;
  const middles = models.map((model) => geometricMiddle(model[minutes]));
  const next = models[taps]?.[minutes] ?? [0, 0];
  const [wideLow, wideHigh] = untaught[minutes];
  const learned: number[] = [];
  let held = 0;
  let width = 0;
  let wideWidth = 0;
  for (let seed = 1; seed <= painters; seed++) {
    const normal = normals(seed);
    const lessons = middles.slice(0, taps).map((middle): Lesson => {
      const real = middle * factor * Math.exp(scatter * normal());
      return { kind: 'tap', ...what, ratio: real / middle, from: 'tap' };
    });
    const pace = learnPace(lessons, what);
    learned.push(pace.factor);
    const [low, high] = applyPace(untaught[minutes], next, pace);
    const real = (middles[taps] as number) * factor * Math.exp(scatter * normal());
    if (low <= real && real <= high) held++;
    width += Math.log(high / low);
    wideWidth += Math.log(wideHigh / wideLow);
  }
  const off = learned.map((f) => Math.abs(f / factor - 1));
  return {
    medianFactor: median(learned),
    within20: off.filter((o) => o < 0.2).length / painters,
    held: held / painters,
    narrowed: width / wideWidth,
  };
}

describe.each(['shine', 'dry'] as const)('%s, times scattering by 25 %%', (clock) => {
  test.each([0.5, 0.7, 1, 1.4, 2])('true times %f of the model: learned after 6 taps', (factor) => {
    const { medianFactor, within20, held, narrowed } = simulate(clock, factor, 0.25);
    expect(Math.abs(medianFactor / factor - 1)).toBeLessThan(0.1);
    expect(within20).toBeGreaterThan(0.8);
    // The next time lies in the range shown, and that range is narrower than the untaught one.
    expect(held).toBeGreaterThan(0.85);
    expect(narrowed).toBeLessThan(0.9);
  });

  test('a painter who scatters by 10 % only gets a narrower range than one with 25 %', () => {
    const even = simulate(clock, 1.3, 0.1);
    expect(even.held).toBeGreaterThan(0.95);
    expect(even.narrowed).toBeLessThan(0.75);
    expect(even.narrowed).toBeLessThan(0.85 * simulate(clock, 1.3, 0.25).narrowed);
  });
});
