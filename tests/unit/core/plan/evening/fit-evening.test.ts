import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomWeather, type Weather } from '../../../../../app/core/drying/weather.ts';
import { longest } from '../../../../../app/core/plan/evening/evening-times.ts';
import { fitsIn } from '../../../../../app/core/plan/evening/evening-work.ts';
import { fitEvening } from '../../../../../app/core/plan/evening/fit-evening.ts';
import type { Reading } from '../../../../../app/core/reading/reading.ts';
import { hoursInWords } from '../../../../../app/core/words/minutes.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import seeds from '../../../../fixtures/readings/seed-heads.json';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { few, inAir, solverFor } from '../../../../support/plan/solved.ts';

const hues = [
  [-10, 20],
  [2, -18],
] as const;
const passages = tableOf([97, 74, 52, 28], hues).flatMap((slot) =>
  ['ground', 'subject'].map((passage) => ({ ...slot, passage, share: slot.share / 2 })),
);
const solvers = [
  await solverFor(madeReading(tableOf([97, 74, 52, 28], hues)), { chosen: few }),
  await solverFor(seeds as unknown as Reading, { chosen: few }),
  await solverFor(madeReading(passages), { chosen: few }),
];
const three = { washes: 3, why: { say: 'washes/reached', washes: 3 }, isAsked: false } as const;

const minutes = fc.integer({ min: 20, max: 1440 });
const solver = fc.constantFrom(...solvers);
const air = fc.constantFrom<Weather>(
  roomWeather,
  { ...roomWeather, hairDryer: true },
  { celsius: 30, humidity: 30, airSpeed: 1 },
  { celsius: 14, humidity: 80, airSpeed: 0.15 },
);

describe('an evening', () => {
  it('with more minutes never gives up more, and fits where it says so', async () => {
    await fc.assert(
      fc.asyncProperty(solver, air, minutes, minutes, async (solve, weather, a, b) => {
        const here = inAir(solve, weather);
        const fitted = (evening: number) => fitEvening(three, { evening }, here);
        const less = await fitted(Math.min(a, b));
        const more = await fitted(Math.max(a, b));
        const gaveUp = less.fit?.gaveUp ?? [];
        expect(gaveUp.slice(0, more.fit?.gaveUp.length)).toEqual(more.fit?.gaveUp);
        for (const { fit: told, work } of [less, more]) {
          expect(fitsIn(work.times, told?.minutes ?? 0)).toBe(told?.tooLong === undefined);
          expect(told?.evenings).toEqual(work.times.map(({ range }) => range));
        }
        expect(longest(less.work.times)).toBeLessThanOrEqual(longest(more.work.times) + 1e-9);
      }),
      { numRuns: 8, seed: 5 },
    );
  });

  it('gives up less water first, then small details, wet paper, washes down to two and what glitters, never the darks, and nothing where there is no hurry', async () => {
    const [solve] = solvers;
    if (!solve) throw new Error('no solver');
    const free = await fitEvening(three, {}, solve);
    expect(free.fit).toBeUndefined();
    const all = Math.ceil(longest(free.work.times));
    const whole = await fitEvening(three, { evening: all }, solve);
    expect(whole.fit?.gaveUp).toEqual([]);
    expect(whole.work.steps).toEqual(free.work.steps);
    const dryer = await fitEvening(three, { evening: all - 5 }, solve);
    expect(dryer.fit?.gaveUp).toHaveLength(1);
    expect(words(dryer.fit?.gaveUp[0])).toMatch(/^Less water/);
    const grams = (steps: typeof whole.work.steps) =>
      steps.filter(({ kind }) => kind === 'wash').map((step) => step.waterGramsPerSquareMetre);
    expect(grams(whole.work.steps)).toEqual([undefined, undefined, undefined]);
    expect(grams(dryer.work.steps)[0]).toBe(40);
    expect(dryer.work.steps.find(({ kind }) => kind === 'wash')?.notes?.[0]).toMatchObject({
      say: 'water/less-dry',
    });
    const short = await fitEvening(three, { evening: 20 }, solve);
    expect(short.work.steps.filter(({ kind }) => kind === 'wash')).toHaveLength(2);
    expect(short.fit?.gaveUp.map((said) => words(said).split(' ').slice(0, 2).join(' '))).toEqual([
      'Less water',
      'No small',
      'All washes',
      'Two washes',
      'No splatter,',
    ]);
    expect(short.work.steps.some(({ technique }) => technique === 'wet-in-wet')).toBe(false);
    const kinds = short.work.steps.map(({ kind }) => kind);
    expect(kinds.includes('accents')).toBe(free.work.steps.some(({ kind }) => kind === 'accents'));
    for (const kind of ['details', 'splatter', 'lift', 'last-lights'] as const) {
      expect(kinds).not.toContain(kind);
    }
    expect(words(short.washesWhy)).toMatch(
      /^Two washes, so that it fits your evening; three would/,
    );
  });

  it('where it is too long all the same says how long, and what smaller sheets would take', async () => {
    for (const solve of solvers) {
      const { fit, work } = await fitEvening(three, { evening: 20 }, solve);
      const time = longest(work.times);
      expect(words(fit?.tooLong?.text)).toContain(hoursInWords(time));
      const [half, quarter] = fit?.tooLong?.smaller ?? [];
      expect([half?.share, quarter?.share]).toEqual([0.5, 0.25]);
      expect(half?.minutes).toBeLessThan(time);
      expect(quarter?.minutes).toBeLessThan(half?.minutes ?? 0);
    }
  });

  it('offers first a smaller sheet on which the whole plan fits', async () => {
    let offered = 0;
    for (const solve of solvers) {
      const free = await fitEvening(three, {}, solve);
      const all = Math.ceil(longest(free.work.times));
      expect((await fitEvening(three, { evening: all }, solve)).fit?.smaller).toBeUndefined();
      const { fit } = await fitEvening(three, { evening: all - 10 }, solve);
      for (const { share, minutes } of fit?.smaller ?? []) {
        offered += 1;
        expect([0.5, 0.25]).toContain(share);
        expect(minutes).toBeLessThan(longest(free.work.times));
        expect(minutes).toBeLessThan(all - 10 + 2.5);
      }
      expect((await fitEvening(three, { evening: 20 }, solve)).fit?.smaller).toBeUndefined();
    }
    expect(offered).toBeGreaterThan(0);
  });

  it('washes she asked for are never taken from her', async () => {
    for (const solve of solvers) {
      const { work } = await fitEvening({ ...three, isAsked: true }, { evening: 20 }, solve);
      const free = await fitEvening(three, {}, solve);
      const keys = (steps: typeof work.steps) =>
        steps.filter(({ kind }) => kind === 'wash').map(({ key }) => key);
      expect(keys(work.steps)).toEqual(keys(free.work.steps));
    }
  });

  it('what it says of a hair dryer is what a hair dryer does', async () => {
    let told = 0;
    for (const solve of solvers) {
      for (const evening of [45, 90, 120, 240]) {
        const { fit, work } = await fitEvening(three, { evening }, inAir(solve, roomWeather));
        if (!fit?.dryer) continue;
        told++;
        const blown = inAir(solve, { ...roomWeather, hairDryer: true });
        const with_ = await fitEvening(three, { evening }, blown);
        expect(longest(with_.work.times)).toBeLessThan(Math.max(evening + 1, longest(work.times)));
        if (words(fit.dryer).includes('would fit')) {
          expect(with_.fit?.tooLong).toBeUndefined();
          expect(with_.fit?.gaveUp.length).toBeLessThanOrEqual(fit.gaveUp.length);
          expect(words(fit.dryer)).toContain(hoursInWords(longest(with_.work.times)));
        }
        expect(with_.fit?.dryer).toBeUndefined();
      }
    }
    expect(told).toBeGreaterThan(4);
  });

  it('a hair dryer is spoken of from the first thing given up on, and never where one is at hand', async () => {
    for (const solve of solvers) {
      const here = inAir(solve, roomWeather);
      const free = await fitEvening(three, {}, here);
      const all = Math.ceil(longest(free.work.times));
      expect((await fitEvening(three, { evening: all }, here)).fit?.dryer).toBeUndefined();
      const { fit } = await fitEvening(three, { evening: all - 5 }, here);
      expect(fit?.gaveUp).toHaveLength(1);
      expect(words(fit?.dryer)).toMatch(
        /^With a hair dryer it would fit as it is, with nothing given up: /,
      );
      const blown = inAir(solve, { ...roomWeather, hairDryer: true });
      const told = await fitEvening(three, { evening: 20 }, blown);
      expect(told.fit?.tooLong).toBeDefined();
      expect(told.fit?.dryer).toBeUndefined();
    }
  });

  it('of less than twenty minutes or of more than a day is refused in a sentence', async () => {
    const [solve] = solvers;
    if (!solve) throw new Error('no solver');
    for (const evening of [0, 19, 1441, 33.3]) {
      await expect(fitEvening(three, { evening }, solve)).rejects.toThrow(/from 20 to 1440/);
    }
  });
});
