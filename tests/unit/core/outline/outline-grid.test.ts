import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlineGrid, rowLetter } from '../../../../app/core/outline/outline-grid.ts';
import { fileName } from '../../../../app/core/outline/outline-svg.ts';
import { gridInWords } from '../../../../app/core/words/outline/outline-grid.ts';

// Equal squares, 4 to 8 across, lettered and numbered: common practice, no source.
test('any sheet: 4 to 8 equal squares fill it across, the rows reach its foot and no further', () => {
  const side = fc.double({ min: 50, max: 2000, noNaN: true });
  fc.assert(
    fc.property(side, side, (widthMm, heightMm) => {
      const { sideMm, across, down, lastRow } = outlineGrid({ widthMm, heightMm });
      expect(across).toBeGreaterThanOrEqual(4);
      expect(across).toBeLessThanOrEqual(8);
      expect(across * sideMm).toBeCloseTo(widthMm, 6);
      expect(lastRow).toBeGreaterThan(0);
      expect(lastRow).toBeLessThanOrEqual(1);
      // Within 2 % of a square, which is how near a last row counts as whole.
      expect(Math.abs((down - 1 + lastRow) * sideMm - heightMm)).toBeLessThanOrEqual(
        0.021 * sideMm,
      );
    }),
  );
});

test('where whole squares fit both ways they are taken', () => {
  expect(outlineGrid({ widthMm: 400, heightMm: 300 })).toEqual({
    sideMm: 100,
    across: 4,
    down: 3,
    lastRow: 1,
  });
  expect(outlineGrid({ widthMm: 300, heightMm: 300 })).toEqual({
    sideMm: 50,
    across: 6,
    down: 6,
    lastRow: 1,
  });
  expect(outlineGrid({ widthMm: 300, heightMm: 500 })).toEqual({
    sideMm: 50,
    across: 6,
    down: 10,
    lastRow: 1,
  });
});

test('of 4 to 8 across it is the number whose rows end nearest to the foot, of equals the one nearest to 6', () => {
  const over = (rows: number): number => Math.abs(rows - Math.max(1, Math.round(rows)));
  for (let heightMm = 40; heightMm < 900; heightMm += 7.3) {
    const { across } = outlineGrid({ widthMm: 400, heightMm });
    const left = (n: number): number => over((heightMm * n) / 400);
    for (const other of [4, 5, 6, 7, 8]) {
      // Told apart to the hundredth of a square.
      expect(left(across)).toBeLessThan(left(other) + 0.00501);
      if (Math.abs(left(other) - left(across)) < 1e-9)
        expect(Math.abs(across - 6)).toBeLessThanOrEqual(Math.abs(other - 6));
    }
  }
  // A narrow strip is less than a row of any: the largest squares leave the least over.
  expect(outlineGrid({ widthMm: 400, heightMm: 20 })).toMatchObject({ across: 8, down: 1 });
});

test('a last row within a fiftieth of a square counts as whole, or as none', () => {
  const rowsOf = (rows: number) => {
    const { across, down, lastRow } = outlineGrid({ widthMm: 400, heightMm: 100 * rows });
    return across === 4 ? [down, Math.round(1000 * lastRow) / 1000] : across;
  };
  expect([rowsOf(3.019), rowsOf(2.981)]).toEqual([
    [3, 1],
    [3, 1],
  ]);
  // Beyond that it is a row of its own, or one that is cut.
  const [over, under] = [1.021, 0.979].map((rows) => {
    const { sideMm, down, lastRow } = outlineGrid({ widthMm: 400, heightMm: rows * 50 });
    return { sideMm, down, lastRow };
  });
  expect(over).toMatchObject({ sideMm: 50, down: 2, lastRow: expect.closeTo(0.021, 6) });
  expect(under).toMatchObject({ sideMm: 50, down: 1, lastRow: expect.closeTo(0.979, 6) });
});

test('rows go on after Z', () => {
  expect([0, 1, 25, 26, 27].map(rowLetter)).toEqual(['A', 'B', 'Z', 'AA', 'AB']);
});

test('the grid in words', () => {
  const grid = { sideMm: 95.25, across: 4, down: 3, lastRow: 0.93 };
  expect(gridInWords(grid)).toBe(
    'Squares of 95 mm on the sheet: 4 across, 3 down; the last row is 9 tenths of a square high.',
  );
  expect(gridInWords({ ...grid, lastRow: 1 })).toBe(
    'Squares of 95 mm on the sheet: 4 across, 3 down.',
  );
  expect(gridInWords({ ...grid, sideMm: 12.35, lastRow: 0.02 })).toContain('12.4 mm');
  expect(gridInWords({ ...grid, lastRow: 0.02 })).toContain('1 tenth of');
});

test.each([
  ['Seed heads, last light', 'Seed-heads-last-light-drawing.svg'],
  ['../../etc: *?', 'etc-drawing.svg'],
  ['Übung № 3', 'Übung-3-drawing.svg'],
  ['  ', 'painting-drawing.svg'],
])('%j is kept as %s', (title, name) => expect(fileName(title, 'drawing.svg')).toBe(name));
