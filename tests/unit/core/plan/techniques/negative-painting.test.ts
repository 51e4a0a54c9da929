import { describe, expect, test } from 'vitest';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import {
  border,
  type MadeSlot,
  madeFacts,
  sheet,
  stepOf,
  techniquesOf,
} from '../../../../support/plan/made-work.ts';

// Where one technique begins and ends to be called for: at the limit and just short of it. The figures are this
// project's own (see the docstrings of each); the sheet is 381 x 279 mm, 106,299 mm2.

const sheetMm2 = sheet.widthMm * sheet.heightMm;
const large: MadeSlot = { lightness: 50, family: 1, share: 0.4, largestMm2: 0.3 * sheetMm2 };

describe('negative painting', () => {
  // The light shape is cut out of the dark one by the second wash.
  const calls = (
    light: Partial<MadeSlot> = {},
    edge: Partial<Border> = {},
    more: { away?: number; dark?: Partial<MadeSlot> } = {},
  ) =>
    techniquesOf(
      stepOf(
        madeFacts({
          slots: [
            {
              lightness: 60,
              family: 4,
              share: 0.05,
              shapes: 10,
              smallShapes: 6,
              largestMm2: 150,
              ...light,
            },
            { ...large, ...more.dark },
            { ...large, family: 3, share: 0.1, lightness: 80 },
          ],
          borders: [
            border(0, 1, { soft: 0.4, lengthMm: 70, ...edge }),
            border(0, 2, { soft: 0.4, lengthMm: more.away ?? 30 }),
          ],
          washes: { sheet: [[0, 1, 2], [1]] },
        }),
        2,
      ),
    ).includes('negative painting');

  test.each([
    ['at all its limits', calls(), true],
    ['less than 10 L* lighter', calls({ lightness: 59.9 }), false],
    ['under seven tenths of its way round', calls({}, {}, { away: 30.1 }), false],
    ['softer round', calls({}, { soft: 0.41 }), false],
    ['lost in part', calls({}, { lost: 0.01 }), false],
    ['under 150 mm2', calls({ largestMm2: 149 }), false],
    ['over six tenths of its shapes small', calls({ smallShapes: 7 }), false],
    ['0.2 % of the sheet', calls({ share: 0.002 }), true],
    ['less', calls({ share: 0.0019 }), false],
    ['as large as the dark round it', calls({}, {}, { dark: { share: 0.05 } }), false],
    ['of another passage', calls({ passage: 'subject' }), false],
  ])('%s', (_, called, wanted) => expect(called).toBe(wanted));
});
