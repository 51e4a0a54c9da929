import { expect, test } from 'vitest';
import { fileName } from '../../../../app/model/file-name.ts';
import { gridInWords } from '../../../../app/model/grid-in-words.ts';

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
