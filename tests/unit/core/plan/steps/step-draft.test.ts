import { expect, test } from 'vitest';
import { minutesOnSheet, sheetPace } from '../../../../../app/core/plan/steps/step-draft.ts';
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
