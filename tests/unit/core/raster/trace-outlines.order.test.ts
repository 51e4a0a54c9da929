import { expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { traceContours } from '../../../../app/core/raster/trace-contours.ts';
import { traceLine } from '../../../../app/core/raster/trace-outlines.ts';

/** '.' is 0, digits are what a map holds. */
const drawn = (...rows: string[]) => ({
  size: { width: rows[0]?.length ?? 0, height: rows.length },
  map: Uint8Array.from(rows.join(''), (sign) => (sign === '.' ? 0 : Number(sign))),
});

/** Where each line begins, and whether it is closed. */
const beginnings = (...rows: string[]): string[] => {
  const { map, size } = drawn(...rows);
  return traceLine(map, size).map(
    ({ places: [x, y], closed }) => `${x},${y}${closed ? ' closed' : ''}`,
  );
};

// The subject lies to the right of a line's direction.
test.each([
  [
    'two lines of one stripe: down its right side, up its left one',
    ['.1..', '.1..'],
    ['2,0', '1,2'],
  ],
  [
    'the higher one first, though the other lies further left',
    ['...1', '....', '1...'],
    ['4,1', '0,2'],
  ],
  ['of one height from left to right', ['....', '...1', '1...', '....'], ['0,2', '4,2']],
])('lines that end at the border: %s', (_, rows, wanted) => {
  expect(beginnings(...rows)).toEqual(wanted);
});

test('closed lines come last, the uppermost first, of one height the leftmost', () => {
  expect(beginnings('......', '...1..', '......', '.1.1..', '......')).toEqual([
    '3,1 closed',
    '1,3 closed',
    '3,3 closed',
  ]);
  expect(beginnings('.1....', '......', '...1..', '......').at(-1)).toBe('3,2 closed');
});

/** Corners of every contour, as 'x,y x,y ...'. */
const contours = (...rows: string[]): string[] => {
  const { map, size } = drawn(...rows);
  return runToEnd(traceContours(map, size)).map(({ corners, closed }) => {
    const places: string[] = [];
    for (let i = 0; i < corners.length; i += 2) places.push(`${corners[i]},${corners[i + 1]}`);
    return `${places.join(' ')}${closed ? ' closed' : ''}`;
  });
};

test('a contour ends at the picture’s border, whatever the next row begins with', () => {
  // Read on past the right border, row 1 would go on with the 0 of row 2.
  expect(contours('000', '111', '011')).toEqual(['0,1 1,1 2,1 3,1', '1,3 1,2 0,2']);
  // And before the left border, row 1 with the 0 at the end of row 0.
  expect(contours('110', '000')).toEqual(['2,0 2,1 1,1 0,1']);
  expect(contours('01', '01')).toEqual(['1,2 1,1 1,0']);
});
