import { expect, test } from 'vitest';
import { mergeTargetsAcrossLostEdges } from '../../../../../app/core/plan/targets/adjust-targets.ts';
import type { EdgeWish } from '../../../../../app/core/reading/edges/edge.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { keptReading } from '../../../../support/reading/kept-reading.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

const slot = (passage: string, family: number, band: number, lightness: number): Slot => ({
  ...(keptReading.slots[0] as Slot),
  passage,
  family,
  band,
  reserve: false,
  target: [lightness, 10, -5],
});
const border = (a: number, b: number, lengthMm: number): Border => ({
  a,
  b,
  lengthMm,
  contrast: 20,
  soft: 0,
  lost: 0,
});
/** The subject's lit side, its shadow side, its darkest, and a dark ground. */
const slots = [
  slot('subject', 1, 1, 70),
  slot('subject', 1, 2, 45),
  slot('subject', 1, 3, 20),
  slot('ground', 2, 3, 28),
];
const borders = [border(1, 3, 100), border(0, 1, 80), border(1, 2, 40)];
const edge = (lengthMm: number, wish: EdgeWish) => uprightEdge(0.5, { a: 1, b: 3, lengthMm, wish });
const lightnessOf = (all: readonly Slot[]) => all.map(({ target }) => target[0]);

test('the shadow side goes down to within 4 L* of the dark ground, its hue stays', () => {
  const next = mergeTargetsAcrossLostEdges(slots, { edges: [edge(90, 'lose')], borders });
  expect(lightnessOf(next)).toEqual([70, 32, 20, 28]);
  expect(next[1]?.target.slice(1)).toEqual([10, -5]);
});

test('not under the next value of its own colour', () => {
  const darker = slots.map((each, i) => (i === 2 ? slot('subject', 1, 3, 36) : each));
  const next = mergeTargetsAcrossLostEdges(darker, { edges: [edge(90, 'lose')], borders });
  expect(lightnessOf(next)).toEqual([70, 36, 36, 28]);
});

test('a short stretch, another wish or a white moves nothing', () => {
  const unmoved = lightnessOf(slots);
  const from = (edges: Parameters<typeof mergeTargetsAcrossLostEdges>[1]['edges'], all = slots) =>
    lightnessOf(mergeTargetsAcrossLostEdges(all, { ...(edges && { edges }), borders }));
  expect(from([edge(40, 'lose')])).toEqual(unmoved);
  expect(from([edge(90, 'soften')])).toEqual(unmoved);
  expect(from(undefined)).toEqual(unmoved);
  const white = slots.map((each, i) => (i === 1 ? { ...each, reserve: true } : each));
  expect(from([edge(90, 'lose')], white)).toEqual(unmoved);
});

test('half of the border must be lost, and a quarter of all that bounds the lighter side', () => {
  const moved = (lost: number, along: number): boolean => {
    const own = [border(1, 3, along), border(0, 1, 80), border(1, 2, 40)];
    const next = mergeTargetsAcrossLostEdges(slots, { edges: [edge(lost, 'lose')], borders: own });
    return next[1]?.target[0] !== 45;
  };
  // Of 100 mm half are 50; 220 bound that side, a quarter are 55.
  expect([moved(53, 100), moved(56, 100)]).toEqual([false, true]);
  // Of 160 half are 80; 280 bound that side, a quarter are 70.
  expect([moved(75, 160), moved(82, 160)]).toEqual([false, true]);
});

test('stretches of one border count together', () => {
  const next = mergeTargetsAcrossLostEdges(slots, {
    edges: [edge(40, 'lose'), edge(45, 'lose')],
    borders,
  });
  expect(lightnessOf(next)).toEqual([70, 32, 20, 28]);
});
