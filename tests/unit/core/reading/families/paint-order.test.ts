import { expect, test } from 'vitest';
import { familiesAsPainted } from '../../../../../app/core/reading/families/paint-order.ts';
import type { Family } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';

test('colours come as the washes need them: from the lightest band on, then the larger', () => {
  const family = (id: number, share: number) => ({ id, share }) as Family;
  const slot = (of: number, band: number) => ({ family: of, band }) as Slot;
  const families = [
    family(1, 0.5),
    family(2, 0.1),
    family(3, 0.3),
    family(4, 0.05),
    family(5, 0.05),
  ];
  const slots = [
    slot(1, 3),
    slot(2, 1),
    slot(2, 4),
    slot(3, 2),
    slot(3, 3),
    slot(4, 2),
    slot(5, 0),
  ];
  expect(familiesAsPainted({ families, slots }).map(({ id }) => id)).toEqual([2, 3, 4, 1, 5]);
});
