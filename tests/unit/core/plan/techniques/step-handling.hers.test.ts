import { expect, test } from 'vitest';
import {
  border,
  type MadeSlot,
  madeFacts,
  stepOf,
  techniquesOf,
} from '../../../../support/plan/made-work.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

// A sky that slopes, broken texture, a soft second colour, and two scraps that touch: four techniques, one of them
// about 2 % of the sheet.
const large: MadeSlot = { lightness: 50, family: 4, share: 0.3, largestMm2: 40_000 };
const scrap = { ...large, share: 0.01, largestMm2: 300 };
const facts = (wish?: 'lose') =>
  madeFacts({
    slots: [
      { ...large, share: 0.4, family: 3, slope: { lightness: 14, towards: 'top', fit: 0.8 } },
      { ...large, share: 0.1, family: 1, shapes: 90, smallShapes: 70, largestMm2: 900 },
      large,
      { ...large, share: 0.03, family: 2, largestMm2: 3000 },
      scrap,
      { ...scrap, family: 1 },
    ],
    borders: [
      border(1, 2, { soft: 0.9, lengthMm: 100 }),
      border(3, 2, { soft: 0.9, lengthMm: 100 }),
    ],
    edges: wish ? [uprightEdge(0.1, { a: 4, b: 5, wish })] : [],
    washes: { sheet: [[0, 1, 2, 3, 4, 5]] },
    loads: { 2: 3 },
  });

test('what she has decided is one of the three, however little of the sheet it is about', () => {
  const told = (wish?: 'lose') => techniquesOf(stepOf(facts(wish), 1, 'wet-in-wet'));
  expect(told()).toEqual(['graded wash', 'charging', 'water drops']);
  expect(told('lose')).toEqual(['graded wash', 'merging', 'water drops']);
});
