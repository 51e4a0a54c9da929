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
  expect(nearestFamily(families, [60, -4, -24])?.name).toBe('blue');
  expect(nearestFamily(families, [10, 1, -2])?.name).toBe('grey');
  expect(nearestFamily([], [50, 0, 0])).toBeNull();
});

test('the same surface in deep shade is still the same colour', () => {
  const shaded = (lab: readonly [number, number, number], light: number) => {
    const factor = (light + 16) / (lab[0] + 16);
    return [light, lab[1] * factor, lab[2] * factor] as const;
  };
  for (const family of families)
    for (const light of [8, 20, 90])
      expect(nearestFamily(families, shaded(family.lab, light))).toBe(family);
});
