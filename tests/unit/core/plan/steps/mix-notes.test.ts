import { expect, it } from 'vitest';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import type { Part } from '../../../../../app/core/paint/mix.ts';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import { mixNotes } from '../../../../../app/core/plan/steps/mix-notes.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const yellow = 'py74-arylide-yellow';
const blue = 'pb153-phthalocyanine-blue';
const paints = paintBox.filter(({ id }) => id === yellow || id === blue);

function row(family: number, parts: readonly Part[], load: number): Mix {
  const used = parts.map(({ paint }) => paints.find(({ id }) => id === paint) as Paint);
  const expected = colourOfWashes([{ paints: used, parts: parts.map((part) => part.parts), load }]);
  return {
    id: `sheet/1/${family}`,
    puddle: `puddle ${family}`,
    wash: 1,
    passage: 'sheet',
    family,
    parts,
    load,
    consistency: 'coffee',
    target: expected,
    expected,
    expectedWet: expected,
  };
}

const one = (paint: string): Part => ({ paint, parts: 1 });
const rows = [
  row(1, [one(yellow)], 2),
  row(2, [one(blue)], 1),
  row(3, [{ paint: yellow, parts: 2 }, one(blue)], 1.5),
];
const colours = [
  [0, 60],
  [-10, -40],
  [-40, 20],
] as const;
const reading = (soft: number, lengthMm = 80) =>
  madeReading(tableOf([60], colours), [
    { a: 0, b: 2, lengthMm, soft },
    { a: 1, b: 2, lengthMm, soft },
  ]);
const notes = (soft: number, mixes: readonly Mix[] = rows, lengthMm = 80) => {
  const seen = reading(soft, lengthMm);
  return mixNotes(mixes, seen, seen.slots, paints).map((mix) => mix.notes?.map(words));
};

it('where a mix lies between two others it meets softly, they may run together', () => {
  expect(notes(0.9)).toEqual([
    undefined,
    undefined,
    ['Instead of mixing this you can let the colour 1 and the colour 2 run together on the paper.'],
  ]);
});

it('not along hard borders, nor along next to none', () => {
  expect(notes(0.4)).toEqual([undefined, undefined, undefined]);
  expect(notes(0.9, rows, 5)).toEqual([undefined, undefined, undefined]);
});

it('not where another colour than theirs is wanted, or the puddle is needed anyhow', () => {
  const other = { ...(rows[2] as Mix), expected: [60, 40, 30] as const };
  expect(notes(0.9, [...rows.slice(0, 2), other])[2]).toBeUndefined();
  const shared = { ...(rows[2] as Mix), puddle: 'puddle 1' };
  expect(notes(0.9, [...rows.slice(0, 2), shared])[2]).toBeUndefined();
});

it('is a matter of all common borders by length: more than six tenths soft, 20 mm long', () => {
  /** Families 1 and 2 meet the third along two borders each, of these lengths (mm) and soft shares. */
  const told = (...parts: readonly (readonly [lengthMm: number, soft: number])[]) => {
    const borders = parts.flatMap(([lengthMm, soft]) => [
      { a: 0, b: 2, lengthMm, soft },
      { a: 1, b: 2, lengthMm, soft },
    ]);
    const seen = madeReading(tableOf([60], colours), borders);
    return mixNotes(rows, seen, seen.slots, paints)[2]?.notes !== undefined;
  };
  expect(told([80, 0.6])).toBe(false);
  expect(told([80, 0.61])).toBe(true);
  expect(told([30, 1], [20, 0])).toBe(false);
  expect(told([31, 1], [19, 0])).toBe(true);
  expect(told([19.5, 1])).toBe(false);
  expect(told([20, 1])).toBe(true);
  expect(told([10, 1], [10, 1])).toBe(true);
});

it('a mix of a paint that is not there is refused, by name', () => {
  const seen = reading(0.9);
  expect(() => mixNotes(rows, seen, seen.slots, paints.slice(0, 1))).toThrow(/paint.*not there.*p/);
});
