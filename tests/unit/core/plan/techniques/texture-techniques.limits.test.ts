import { describe, expect, test } from 'vitest';
import type { Technique } from '../../../../../app/core/decisions/plan-edit.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import {
  border,
  type MadeSlot,
  madeFacts,
  sheet,
  stepOf,
  techniquesOf,
} from '../../../../support/plan/made-work.ts';
import { stained } from '../../../../support/plan/stained.ts';

// Where one technique begins and ends to be called for: at the limit and just short of it. The figures are this
// project's own (see the docstrings of each); the sheet is 381 x 279 mm, 106,299 mm2.

const sheetMm2 = sheet.widthMm * sheet.heightMm;
const large: MadeSlot = { lightness: 50, family: 1, share: 0.4, largestMm2: 0.3 * sheetMm2 };
const broken = { shapes: 100, smallShapes: 60, largestMm2: 900 };

type Changed = Partial<MadeSlot> | { readonly edge: Partial<Border> };

describe('texture', () => {
  // 0 is broken, 1 the plain ground, 2 a white; the outline of 0 is as soft as its borders.
  const made = (
    slot: Changed,
    wash: number,
    technique: Technique = 'wet on dry',
    passage = 'sheet',
  ) => {
    const edge = 'edge' in slot ? slot.edge : {};
    const changed = 'edge' in slot ? {} : slot;
    const facts = madeFacts({
      slots: [
        { ...large, ...broken, share: 0.03, passage, ...changed },
        { ...large, family: 3, passage, lightness: 70 },
      ],
      borders: [border(0, 1, { soft: 0.1, lengthMm: 500, ...edge })],
      washes: { [passage]: wash === 1 ? [[0, 1]] : [[0, 1], [0]] },
    });
    return techniquesOf(stepOf(facts, wash, technique, passage));
  };

  test.each<[string, Changed, number, Technique, boolean]>([
    ['crisp, in the second wash', {}, 2, 'wet on dry', true],
    ['in the first', {}, 1, 'wet on dry', false],
    ['2 % of the sheet', { share: 0.02 }, 2, 'wet on dry', true],
    ['less', { share: 0.0199 }, 2, 'wet on dry', false],
    ['nearly two fifths soft', { edge: { soft: 0.39 } }, 2, 'wet on dry', true],
    ['two fifths soft or lost', { edge: { soft: 0.3, lost: 0.1 } }, 2, 'wet on dry', false],
    ['39 small shapes', { smallShapes: 39, shapes: 39 }, 2, 'wet on dry', false],
    ['40', { smallShapes: 40, shapes: 40 }, 2, 'wet on dry', true],
    ['under three fifths of its shapes small', { smallShapes: 59 }, 2, 'wet on dry', false],
    ['a large plain one among them', { largestMm2: 0.1 * sheetMm2 }, 2, 'wet on dry', false],
    ['a glaze', {}, 2, 'glaze', false],
  ])('dry brush: %s', (_, slot, wash, technique, called) =>
    expect(made(slot, wash, technique).includes('dry brush')).toBe(called),
  );

  test.each<[string, Changed, Technique, string, boolean]>([
    ['two fifths soft', { edge: { soft: 0.4 } }, 'wet on dry', 'sheet', true],
    ['less', { edge: { soft: 0.39 } }, 'wet on dry', 'sheet', false],
    ['on wetted paper', { edge: { soft: 0.4 } }, 'wet-in-wet', 'sheet', true],
    ['a glaze', { edge: { soft: 0.4 } }, 'glaze', 'sheet', false],
    ['dry brush', { edge: { soft: 0.4 } }, 'dry brush', 'sheet', false],
    ['in the ground', { edge: { soft: 0.4 } }, 'wet on dry', 'ground', true],
    ['on the subject', { edge: { soft: 0.4 } }, 'wet on dry', 'subject', false],
  ])('water drops: %s', (_, slot, technique, passage, called) =>
    expect(made(slot, 1, technique, passage).includes('water drops')).toBe(called),
  );

  test('water drops want 3 % of the sheet, and a shine that can be watched', () => {
    const facts = (share: number) =>
      madeFacts({
        slots: [
          { ...large, ...broken, share },
          { ...large, family: 3 },
        ],
        borders: [border(0, 1, { soft: 0.4 })],
        washes: { sheet: [[0, 1]] },
      });
    expect(techniquesOf(stepOf(facts(0.03)))).toContain('water drops');
    expect(techniquesOf(stepOf(facts(0.0299)))).not.toContain('water drops');
  });
});

describe('lifting small soft lights out of the damp', () => {
  const calls = (
    light: Partial<MadeSlot> = {},
    edge: Partial<Border> = {},
    more: {
      away?: number;
      dark?: Partial<MadeSlot>;
      staining?: 0 | 1 | null;
      technique?: Technique;
    } = {},
  ) =>
    techniquesOf(
      stepOf(
        stained(
          madeFacts({
            slots: [
              { ...large, ...more.dark },
              {
                lightness: 56,
                family: 2,
                share: 0.05,
                shapes: 5,
                smallShapes: 3,
                largestMm2: 400,
                ...light,
              },
              { ...large, family: 3, share: 0.1, lightness: 80 },
            ],
            borders: [
              border(0, 1, { soft: 0.6, lengthMm: 40, ...edge }),
              border(1, 2, { lengthMm: more.away ?? 40 }),
            ],
            washes: { sheet: [[0, 1]] },
            loads: { 1: 1000, 2: 0.001 }, // thinner than the shape round it: not dropped in
          }),
          more.staining === undefined ? 0 : more.staining,
        ),
        1,
        more.technique,
      ),
    ).includes('lifting');

  test.each([
    ['at all its limits', calls(), true],
    ['two small shapes', calls({ smallShapes: 2 }), false],
    ['less than 6 L* lighter', calls({ lightness: 55.9 }), false],
    ['30 L* lighter', calls({ lightness: 80 }), true],
    ['more', calls({ lightness: 80.1 }), false],
    ['a border less soft', calls({}, { soft: 0.59 }), false],
    ['a shorter one', calls({}, { lengthMm: 39.9 }, { away: 30 }), false],
    ['under half of its way round', calls({}, {}, { away: 40.1 }), false],
    ['in a smaller shape', calls({}, {}, { dark: { share: 0.049 } }), false],
    ['in one as large', calls({}, {}, { dark: { share: 0.05 } }), true],
    ['out of a paint that stains a little', calls({}, {}, { staining: 1 }), false],
    ['of which it is not known', calls({}, {}, { staining: null }), false],
    ['a glaze', calls({}, {}, { technique: 'glaze' }), false],
    ['dry brush', calls({}, {}, { technique: 'dry brush' }), false],
  ])('%s', (_, called, wanted) => expect(called).toBe(wanted));
});
