import { describe, expect, test } from 'vitest';
import { estimateDrying } from '../../../../app/model/drying/estimate-drying.ts';
import { type Lesson, paceOf } from '../../../../app/model/drying/learn-pace.ts';
import { modelRange } from '../../../../app/model/drying/model-range.ts';
import { middleOf, taughtRange } from '../../../../app/model/drying/taught-range.ts';
import type { Weather } from '../../../../app/model/drying/weather.ts';

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
  const middles = models.map((model) => middleOf(model[minutes]));
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
    const pace = paceOf(lessons, what);
    learned.push(pace.factor);
    const [low, high] = taughtRange(untaught[minutes], next, pace);
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
