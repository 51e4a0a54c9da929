import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  printTiles,
  printWindow,
  registerMarks,
} from '../../../../app/core/outline/print-tiles.ts';

/** What neighbours share, mm. */
const overlapMm = 10;
const side = fc.double({ min: 50, max: 2000, noNaN: true });

test('any sheet is shown whole, neighbours share a strip, and no fewer pages would do', () => {
  fc.assert(
    fc.property(side, side, (widthMm, heightMm) => {
      const { tiles, columns, rows, widthMm: w, heightMm: h } = printTiles({ widthMm, heightMm });
      expect(tiles).toHaveLength(columns * rows);
      expect(tiles[0]?.leftMm).toBeLessThanOrEqual(1e-9);
      expect(tiles[0]?.topMm).toBeLessThanOrEqual(1e-9);
      expect((tiles.at(-1)?.leftMm ?? 0) + w).toBeGreaterThanOrEqual(widthMm - 1e-9);
      expect((tiles.at(-1)?.topMm ?? 0) + h).toBeGreaterThanOrEqual(heightMm - 1e-9);
      for (const tile of tiles.slice(1)) {
        const before = tiles[tile.n - 2];
        if (!before || tile.row !== before.row) continue;
        expect(before.leftMm + w - tile.leftMm).toBeCloseTo(overlapMm, 9);
      }
      const least = (columns - 1) * (w - overlapMm) + overlapMm; // one column less holds only this much
      if (columns > 1) expect(widthMm).toBeGreaterThan(least - 1e-9);
    }),
  );
});

// Source: A4 210 x 297 mm, ISO 216:2007; letter 216 x 279 mm, ANSI/ASME Y14.1. Margins and words are (own).
test('a page fits A4 and letter, with words below and margins', () => {
  expect(printWindow.shortMm).toBeLessThanOrEqual(210 - 20);
  expect(printWindow.longMm).toBeLessThanOrEqual(279 - 40);
});

test('a quarter sheet takes four pages, a postcard one', () => {
  expect(printTiles({ widthMm: 381, heightMm: 279 })).toMatchObject({
    turned: true,
    columns: 2,
    rows: 2,
  });
  expect(printTiles({ widthMm: 279, heightMm: 381 })).toMatchObject({
    turned: false,
    columns: 2,
    rows: 2,
  });
  const card = printTiles({ widthMm: 148, heightMm: 105 });
  expect(card.tiles).toHaveLength(1);
  expect(registerMarks(card.tiles[0] as (typeof card.tiles)[0], card)).toEqual([]);
});

test('crosses of neighbours lie on the same places of the sheet', () => {
  const pages = printTiles({ widthMm: 559, heightMm: 381 });
  const marks = pages.tiles.map((tile) =>
    registerMarks(tile, pages).map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`),
  );
  pages.tiles.forEach((tile, i) => {
    const right = pages.tiles.findIndex(
      (other) => other.row === tile.row && other.column === tile.column + 1,
    );
    if (right === -1) return;
    const shared = (marks[i] ?? []).filter((mark) => marks[right]?.includes(mark));
    expect(shared).toHaveLength(2);
  });
});

test('the four pages of a quarter sheet: where each begins, what lies beside it, where its crosses are', () => {
  // Turned, 230 x 180 mm with 10 mm in common: 450 x 350 in all, so 34.5 and 35.5 mm over on every side.
  const pages = printTiles({ widthMm: 381, heightMm: 279 });
  expect(pages).toMatchObject({ widthMm: 230, heightMm: 180 });
  expect(
    pages.tiles.map(({ n, column, row, leftMm, topMm }) => [n, column, row, leftMm, topMm]),
  ).toEqual([
    [1, 1, 1, -34.5, -35.5],
    [2, 2, 1, 185.5, -35.5],
    [3, 1, 2, -34.5, 134.5],
    [4, 2, 2, 185.5, 134.5],
  ]);
  const beside = pages.tiles.map(({ beside }) =>
    (['left', 'right', 'above', 'below'] as const).filter((way) => beside[way]).join(' '),
  );
  expect(beside).toEqual(['right below', 'left below', 'right above', 'left above']);
  // Crosses stand in the middle of the strips, but for the corner that no page lies beside.
  const [first] = pages.tiles;
  if (!first) throw new Error('no page');
  expect(registerMarks(first, pages)).toEqual([
    [-29.5, 139.5],
    [190.5, -30.5],
    [190.5, 139.5],
  ]);
});

test('pages are counted by what they hold: one more from where a strip would be missing', () => {
  const columns = (widthMm: number) => printTiles({ widthMm, heightMm: 100 }).columns;
  // As many pages either way round are printed upright, 180 mm wide; fewer turned, 230.
  expect([180, 181, 230, 231, 350, 351, 450, 451].map(columns)).toEqual([1, 1, 1, 2, 2, 2, 2, 3]);
  expect(printTiles({ widthMm: 180, heightMm: 100 }).turned).toBe(false);
  expect(printTiles({ widthMm: 181, heightMm: 100 }).turned).toBe(true);
});
