import { expect, test } from 'vitest';
import { type Lesson, paceOf, teaches } from '../../../../app/model/drying/learn-pace.ts';

const what = {
  clock: 'dry',
  paper: { gsm: 300, fibre: 'cotton' },
  wash: 'wash',
} as const;
const tap = (ratio: number): Lesson => ({ kind: 'tap', ...what, ratio, from: 'a' });
const factor = (...ratios: number[]): number => paceOf(ratios.map(tap), what).factor;

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
  expect(paceOf([tap(0.001)], what).taps).toBe(0);
  expect(teaches(1)).toBe(true);
});

test('each clock, paper and kind of wash learns for itself', () => {
  const lessons = [tap(2), tap(2)];
  expect(paceOf(lessons, { ...what, clock: 'shine' }).taps).toBe(0);
  expect(paceOf(lessons, { ...what, wash: 'glaze' }).taps).toBe(0);
  expect(paceOf(lessons, { ...what, paper: { gsm: 640, fibre: 'cotton' } }).taps).toBe(0);
  expect(paceOf(lessons, { ...what, paper: { gsm: 300, fibre: 'cellulose' } }).taps).toBe(0);
  expect(paceOf(lessons, { ...what, paper: { gsm: 300, fibre: 'cotton' } }).taps).toBe(2);
});

test('forgetting one clock leaves the other', () => {
  const shine = { ...what, clock: 'shine' } as const;
  const lessons: Lesson[] = [
    tap(2),
    { ...tap(2), clock: 'shine' },
    { kind: 'forget', ...what },
    tap(0.81),
  ];
  expect(paceOf(lessons, what)).toMatchObject({ taps: 1 });
  expect(paceOf(lessons, what).factor).toBeCloseTo(0.9, 9);
  expect(paceOf(lessons, shine).taps).toBe(1);
});

test('scattered taps leave a wider range than taps that agree', () => {
  const even = paceOf([1, 1, 1, 1, 1, 1].map(tap), what);
  const odd = paceOf([0.5, 2, 0.5, 2, 0.5, 2].map(tap), what);
  expect(odd.scatter).toBeGreaterThan(2 * even.scatter);
});
