import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { colourOfWashes, defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import type { PaletteSearch } from '../../../../../app/core/palette/search/search-palette.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import type { SolvedPassage } from '../../../../../app/core/plan/plan-facts.ts';
import {
  meanFinalError,
  ratePalette,
  unsteadinessOf,
} from '../../../../../app/core/plan/solve/rate-palette.ts';
import type { PlannedSlots } from '../../../../../app/core/plan/targets/planned-slots.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('pb29-ultramarine-blue', 'pbr7-burnt-sienna', 'py43-yellow-ochre');
const [blue, sienna] = paints;
if (!blue || !sienna) throw new Error('no paints');

const slot = (band: number, share: number, more: Partial<Slot> = {}): Slot => ({
  passage: 'sheet',
  band,
  family: 1,
  share,
  lab: [60, 0, 0],
  target: [60, 0, 0],
  reserve: false,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 2000,
  ...more,
});

const mixOf = (wash: number, parts: Mix['parts'], load: number, more: Partial<Mix> = {}): Mix => ({
  id: `sheet/${wash}/1`,
  puddle: 'A',
  passage: 'sheet',
  wash,
  family: 1,
  parts,
  load,
  consistency: 'tea',
  target: null,
  expected: defaultPaperLab,
  expectedWet: { lab: defaultPaperLab, range: null } as unknown as Mix['expectedWet'],
  ...more,
});

const passage = (
  ...washes: { mixes: readonly Mix[]; slots: readonly number[]; after?: readonly Lab[] }[]
): { passages: SolvedPassage[] } => ({
  passages: [
    {
      passage: 'sheet',
      washes: washes.map(({ mixes, slots, after }, n) => ({
        wash: n + 1,
        full: [n + 1],
        weak: [],
        mixes,
        slots,
        after: after ?? slots.map(() => defaultPaperLab),
      })),
    },
  ],
});

const both = [
  { paint: blue.id, parts: 2 },
  { paint: sienna.id, parts: 1 },
];
/** Washes of blue and sienna by loads of each, ml/m2. */
const colourOf = (...washes: (readonly [blue: number, sienna: number])[]): Lab =>
  colourOfWashes(
    washes.map((loads) => ({
      paints: [blue, sienna],
      parts: loads,
      load: loads[0] + loads[1],
    })),
  );

describe('how unsteady a sheet is', () => {
  it('is what a tube 15 % stronger does to its colour, of all paints the root of the squares', () => {
    const washed = passage({ mixes: [mixOf(1, both, 3)], slots: [0] });
    const planned = colourOf([2, 1]);
    const byBlue = colourDifference(planned, colourOf([2.3, 1]));
    const bySienna = colourDifference(planned, colourOf([2, 1.15]));
    expect(Math.min(byBlue, bySienna)).toBeGreaterThan(0.5);
    expect(unsteadinessOf([slot(1, 0.4)], washed, paints)).toBeCloseTo(
      Math.hypot(byBlue, bySienna),
      6,
    );
  });

  it('goes through all washes alike, as one tube paints them all', () => {
    const blueAlone = [{ paint: blue.id, parts: 1 }];
    const washed = passage(
      { mixes: [mixOf(1, blueAlone, 1)], slots: [0] },
      { mixes: [mixOf(2, blueAlone, 2)], slots: [0] },
    );
    const moved = colourDifference(colourOf([1, 0], [2, 0]), colourOf([1.15, 0], [2.3, 0]));
    expect(unsteadinessOf([slot(1, 0.4)], washed, paints)).toBeCloseTo(moved, 6);
  });

  it('is the mean over the painted area, at the strength each shape has; whites and bare shapes are steady', () => {
    const weaker = { bands: [1], load: 0.5 } as unknown as NonNullable<Mix['weaker']>;
    const other = mixOf(1, [{ paint: blue.id, parts: 1 }], 6, { family: 2, id: 'sheet/1/2' });
    const washed = passage({
      mixes: [mixOf(1, [{ paint: blue.id, parts: 1 }], 4, { weaker }), other],
      slots: [0, 1],
    });
    const slots = [
      slot(1, 0.3),
      slot(2, 0.1),
      slot(1, 0.2, { reserve: true }),
      slot(3, 0.1, { family: 3 }),
    ];
    const moved = (load: number): number =>
      colourDifference(colourOf([load, 0]), colourOf([1.15 * load, 0]));
    const mean = (0.3 * moved(0.5) + 0.1 * moved(4)) / 0.5;
    expect(unsteadinessOf(slots, washed, paints)).toBeCloseTo(mean, 6);
    expect(unsteadinessOf([slot(1, 1, { reserve: true })], { passages: [] }, paints)).toBe(0);
  });
});

describe('the rating of a palette', () => {
  const search = {
    paints: [...paints].reverse(),
    tables: { prices: [7, 0.5, 0.25] },
  } as unknown as PaletteSearch;
  const slots = [slot(1, 0.6), slot(1, 0.2, { family: 2 }), slot(1, 0.2, { reserve: true })];
  const wide = { slots, range: { paper: 95 } } as unknown as PlannedSlots['wide'];
  const after: Lab = [58, 0, 0];
  const washed = passage({ mixes: [mixOf(1, both, 3)], slots: [0], after: [after] });

  it('is the prices of the paints used, the error of the last sheet, and half of what it is unsteady', () => {
    const error =
      0.75 * colourDifference([60, 0, 0], after) + 0.25 * colourDifference([60, 0, 0], [95, 0, 0]);
    expect(meanFinalError(slots, washed, 95)).toBeCloseTo(error, 6);
    const used = [blue, sienna];
    const unsteady = unsteadinessOf(slots, washed, used);
    expect(ratePalette(search, { ...washed, paints: used }, wide)).toBeCloseTo(
      0.75 + error + 0.5 * unsteady,
      6,
    );
  });

  it('prefers of two sheets as near the one that holds in her hand', () => {
    const grey = passage({ mixes: [mixOf(1, both, 3)], slots: [0], after: [after] });
    const plain = passage({
      mixes: [mixOf(1, [{ paint: sienna.id, parts: 1 }], 1)],
      slots: [0],
      after: [after],
    });
    const rate = (washes: typeof grey): number =>
      ratePalette(search, { ...washes, paints: [blue, sienna] }, wide);
    expect(rate(plain)).toBeLessThan(rate(grey) - 0.3);
  });
});
