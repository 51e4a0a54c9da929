import { expect, test } from 'vitest';
import { estimateDrying } from '../../../../../app/core/drying/estimate-drying.ts';
import { usualPaper } from '../../../../../app/core/drying/paper-choice.ts';
import { reducedWaterGrams, type WaterKind } from '../../../../../app/core/drying/water.ts';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import {
  dryingMinutes,
  minutesOnSheet,
  paintMinutes,
  sheetPace,
} from '../../../../../app/core/plan/steps/step-draft.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const on = (widthMm: number, heightMm: number) => {
  const reading = madeReading(tableOf([90, 50], [[0, 0]]), []);
  return { reading: { ...reading, sheet: { ...reading.sheet, widthMm, heightMm } } };
};

// Own estimate, no source: with the side of the sheet, a quarter sheet 1.
test('handling takes as long as the sheet is wide', () => {
  expect(sheetPace(on(381, 279))).toBe(1);
  expect(sheetPace(on(762, 558))).toBeCloseTo(2, 9);
  expect(sheetPace(on(148, 105))).toBeCloseTo(0.382, 3);
  expect(sheetPace(on(40, 30))).toBeCloseTo(1 / 3, 9);
  expect(sheetPace(on(1500, 1000))).toBe(2);
});

test('minutes follow it and stay a range of whole minutes', () => {
  expect(minutesOnSheet(on(381, 279), [3, 8])).toEqual([3, 8]);
  expect(minutesOnSheet(on(148, 105), [3, 8])).toEqual([1, 3]);
  expect(minutesOnSheet(on(148, 105), [2, 3])).toEqual([1, 2]);
  expect(minutesOnSheet(on(762, 558), [3, 8])).toEqual([6, 16]);
});

test('painting takes the area by its pace and some seconds a shape, from 0.7 to 1.5 times that', () => {
  const pace = { cm2PerMinute: 50, secondsPerShape: 6 };
  // 1000 cm2 take 20 minutes, 100 shapes 10 more.
  expect(paintMinutes(1000, 100, pace)).toEqual([21, 45]);
  expect(paintMinutes(1000, 0, pace)).toEqual([14, 30]);
});

test('beyond 150 shapes she works in texture: more of them take no longer', () => {
  const pace = { cm2PerMinute: 50, secondsPerShape: 60 };
  expect(paintMinutes(0, 150, pace)).toEqual([105, 225]);
  expect(paintMinutes(0, 149, pace)).toEqual([104, 224]);
  expect(paintMinutes(0, 900, pace)).toEqual([105, 225]);
});

test('the smallest wash takes a minute or two', () => {
  expect(paintMinutes(1, 1, { cm2PerMinute: 50, secondsPerShape: 6 })).toEqual([1, 2]);
});

test.each(['wash', 'wetInWet', 'stroke'] as const)(
  'the clocks of a %s with less water: to half a minute below 10, whole minutes above',
  (kind: WaterKind) => {
    const facts = { weather: roomWeather, paper: usualPaper, water: 'less' } as PlanFacts;
    const { shineMinutes, dryMinutes } = dryingMinutes(facts, kind);
    const estimate = estimateDrying({
      waterGramsPerSquareMetre: reducedWaterGrams[kind] ?? 0,
      weather: roomWeather,
      paperGsm: usualPaper.gsm,
    });
    const told = [...shineMinutes, ...dryMinutes];
    for (const [i, minutes] of [...estimate.shineMinutes, ...estimate.dryMinutes].entries()) {
      const step = minutes < 10 ? 0.5 : 1;
      expect(Math.abs((told[i] ?? 0) - minutes)).toBeLessThanOrEqual(step / 2);
      expect((told[i] ?? 0) % step).toBe(0);
    }
  },
);
