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

// Where one technique begins and ends to be called for: at the limit and just short of it. The figures are this
// project's own (see the docstrings of each); the sheet is 381 x 279 mm, 106,299 mm2.

const sheetMm2 = sheet.widthMm * sheet.heightMm;
const large: MadeSlot = { lightness: 50, family: 1, share: 0.4, largestMm2: 0.3 * sheetMm2 };
const broken = { shapes: 100, smallShapes: 60, largestMm2: 900 };

describe('graded wash of one shape', () => {
  const base = { lightness: 8, fit: 0.5, towards: 'top' } as const;
  const calls = (slope: object, share = 0.08) =>
    techniquesOf(
      stepOf(
        madeFacts({
          slots: [
            { ...large, largestMm2: Math.ceil(share * sheetMm2), slope: { ...base, ...slope } },
          ],
          washes: { sheet: [[0]] },
        }),
      ),
    ).includes('graded wash');

  test.each([
    ['8 L* from end to end', {}, 0.08, true],
    ['less', { lightness: 7.9 }, 0.08, false],
    ['a plane that explains less than half', { fit: 0.49 }, 0.08, false],
    ['less than 8 % of the sheet', {}, 0.0799, false],
  ])('%s', (_, slope, share, called) => expect(calls(slope, share)).toBe(called));
});

describe('graded wash of two values that run into each other', () => {
  const light: MadeSlot = {
    ...large,
    lightness: 70,
    band: 2,
    largestMm2: 9000,
    centre: [0.5, 0.2],
  };
  // 0.2 of 381 mm are 76.2 mm, 0.2732 of the height.
  const dark: MadeSlot = {
    ...light,
    lightness: 55,
    band: 3,
    largestMm2: 4252,
    centre: [0.5, 0.4732],
  };
  const strongSide = (changed: {
    light?: Partial<MadeSlot>;
    dark?: Partial<MadeSlot>;
    edge?: Partial<Border>;
  }) =>
    stepOf(
      madeFacts({
        slots: [
          { ...light, ...changed.light },
          { ...dark, ...changed.dark },
        ],
        borders: [border(0, 1, { soft: 0.3, lost: 0.2, ...changed.edge })],
        washes: { sheet: [[0, 1]] },
      }),
    ).touches?.find(({ technique }) => technique === 'graded wash')?.text;

  test.each([
    ['half of the border soft or lost, 76 mm apart, 4 % and 12 % of the sheet', {}, true],
    ['less of it', { edge: { soft: 0.29 } }, false],
    ['nearer together', { dark: { centre: [0.5, 0.473] as const } }, false],
    ['one under 4 %', { dark: { largestMm2: 4251 } }, false],
    ['both under 12 %', { light: { largestMm2: 8500 } }, false],
    ['of two colours', { dark: { family: 2 } }, false],
    ['of two passages', { dark: { passage: 'subject' } }, false],
    ['of one value', { dark: { band: 2 } }, false],
    ['from an older reading, without a middle', { dark: { centre: undefined as never } }, false],
  ])('%s', (_, changed, called) => expect(strongSide(changed) !== undefined).toBe(called));

  test.each([
    ['below', [0.5, 0.6], 'at the bottom'],
    ['above', [0.5, 0.05], undefined], // 42 mm: too near
    ['to the left', [0.2, 0.2], 'on the left'],
    ['lower right: 114 mm and 112 mm', [0.8, 0.6], 'lower right'],
  ] as const)('strong where the darker one lies: %s', (_, centre, side) => {
    const text = strongSide({ dark: { centre } });
    if (side) expect(text).toMatch(new RegExp(`strong ${side}`));
    else expect(text).toBeUndefined();
  });

  test('which of the two is listed first makes no difference', () => {
    const turned = strongSide({
      light: { band: 3, centre: [0.5, 0.7] },
      dark: { band: 2, centre: [0.5, 0.2], largestMm2: 9000 },
    });
    expect(turned).toMatch(/strong at the bottom/);
  });
});

/** A tint and the stiffest paint, in any unit of load. */
const [thin, thick] = [0.001, 1000];

describe('charging', () => {
  const calls = (
    inner: Partial<MadeSlot> = {},
    edge: Partial<Border> = {},
    more: {
      away?: number;
      around?: Partial<MadeSlot>;
      technique?: Technique;
      loads?: Record<number, number>;
    } = {},
  ) =>
    techniquesOf(
      stepOf(
        madeFacts({
          slots: [
            { ...large, ...more.around },
            { lightness: 60, family: 2, share: 0.2, largestMm2: 5000, ...inner },
            { ...large, family: 3, share: 0.1, lightness: 80 },
          ],
          borders: [
            border(0, 1, { soft: 0.6, lengthMm: 40, ...edge }),
            border(1, 2, { lengthMm: more.away ?? 40 }),
          ],
          washes: { sheet: [[0, 1]] },
          loads: more.loads ?? { 1: thin, 2: thick },
        }),
        1,
        more.technique,
      ),
    ).includes('charging');

  test.each([
    ['at all its limits', calls(), true],
    ['a border less soft', calls({}, { soft: 0.59 }), false],
    ['a shorter border', calls({}, { lengthMm: 39.9 }, { away: 30 }), false],
    ['under half of its way round', calls({}, {}, { away: 40.1 }), false],
    ['over half as large as what is round it', calls({ share: 0.201 }), false],
    ['half a percent of the sheet', calls({ share: 0.005 }), true],
    ['less', calls({ share: 0.0049 }), false],
    ['broken texture', calls(broken), false],
    ['the same colour', calls({ family: 1 }), false],
    ['another passage round it', calls({}, {}, { around: { passage: 'subject' } }), false],
    ['as thick as what is there', calls({}, {}, { loads: { 1: thick, 2: thick } }), true],
    ['thinner', calls({}, {}, { loads: { 1: thick, 2: thin } }), false],
    ['on wetted paper', calls({}, {}, { technique: 'wet-in-wet' }), true],
    ['a glaze', calls({}, {}, { technique: 'glaze' }), false],
    ['dry brush', calls({}, {}, { technique: 'dry brush' }), false],
  ])('%s', (_, called, wanted) => expect(called).toBe(wanted));

  test('with a single paint there is no second colour', () => {
    const facts = madeFacts({
      slots: [large, { lightness: 60, family: 2, share: 0.2, largestMm2: 5000 }],
      borders: [border(0, 1, { soft: 0.6 })],
      washes: { sheet: [[0, 1]] },
      loads: { 1: thin, 2: thick },
    });
    expect(techniquesOf(stepOf({ ...facts, paints: facts.paints.slice(0, 1) }))).toEqual([]);
    expect(techniquesOf(stepOf(facts))).toEqual(['charging']);
  });
});
