import { expect, test } from 'vitest';
import { nearestFamily } from '../../../../app/model/nearest-family.ts';
import type { Family } from '../../../../app/model/reading.ts';

const families: Family[] = [
  { id: 1, lab: [60, 20, 40], share: 0.5, name: 'ochre' },
  { id: 2, lab: [40, -5, -30], share: 0.3, name: 'blue' },
  { id: 3, lab: [80, 0, 0], share: 0.2, name: 'grey' },
];

test('a spot belongs to the colour nearest in hue and strength, whatever its value', () => {
  expect(nearestFamily(families, [5, 18, 35])?.name).toBe('ochre');
  expect(nearestFamily(families, [95, -4, -20])?.name).toBe('blue');
  expect(nearestFamily(families, [10, 1, -2])?.name).toBe('grey');
  expect(nearestFamily([], [50, 0, 0])).toBeNull();
});
