import { describe, expect, test } from 'vitest';
import { traceLine, whiteOutlines } from '../../../../app/core/raster/trace-outlines.ts';
import { seeded } from '../../../support/reading/seeded.ts';

/** '.' is 0, digits are what a map holds. */
const drawn = (...rows: string[]) => ({
  size: { width: rows[0]?.length ?? 0, height: rows.length },
  map: Uint8Array.from(rows.join(''), (sign) => (sign === '.' ? 0 : Number(sign))),
});
const size = { width: 37, height: 23 };
const random = seeded(11);
const masks = [0.1, 0.4, 0.6, 0.9].map((filled) =>
  Uint8Array.from({ length: 37 * 23 }, () => (random() < filled ? 1 : 0)),
);

describe('the line between subject and ground', () => {
  const lines = (...rows: string[]) => {
    const { map, size: small } = drawn(...rows);
    return traceLine(map, small).map(({ places, closed }) => ({ places: [...places], closed }));
  };

  test('runs round a subject with the subject to its right, from its upper left corner', () => {
    expect(lines('...', '.1.', '...')).toEqual([
      { places: [1, 1, 2, 1, 2, 2, 1, 2, 1, 1], closed: true },
    ]);
  });

  test('runs the other way round a hole', () => {
    const [outer, hole] = lines('.....', '.111.', '.1.1.', '.111.', '.....');
    expect(outer?.places.slice(0, 4)).toEqual([1, 1, 2, 1]);
    expect(hole).toEqual({ places: [2, 2, 2, 3, 3, 3, 3, 2, 2, 2], closed: true });
  });

  test('ends at the border of the picture; such lines come first', () => {
    expect(lines('..1', '1..', '...').map(({ closed }) => closed)).toEqual([false, false]);
    const found = lines('.....', '.1...', '...11');
    expect(found.map(({ closed }) => closed)).toEqual([false, true]);
    expect(found[0]?.places).toEqual([3, 3, 3, 2, 4, 2, 5, 2]);
  });

  test('parts that touch at a corner have a line each', () => {
    expect(lines('....', '.1..', '..1.', '....')).toHaveLength(2);
  });

  test('seeded masks: every side between 1 and 0 is walked once, 1 to the right of it', () => {
    for (const mask of masks) {
      const at = (x: number, y: number) => mask[y * 37 + x];
      const sides = new Set<string>();
      for (const { places } of traceLine(mask, size)) {
        for (let i = 2; i < places.length; i += 2) {
          const [x0, y0, x1, y1] = places.subarray(i - 2, i + 2) as unknown as number[];
          const [dx, dy] = [(x1 as number) - (x0 as number), (y1 as number) - (y0 as number)];
          expect(Math.abs(dx) + Math.abs(dy)).toBe(1);
          const middle = [
            ((x0 as number) + (x1 as number)) / 2,
            ((y0 as number) + (y1 as number)) / 2,
          ];
          const [mx, my] = middle as [number, number];
          expect(at(Math.floor(mx - dy / 2), Math.floor(my + dx / 2))).toBe(1);
          expect(at(Math.floor(mx + dy / 2), Math.floor(my - dx / 2))).toBe(0);
          sides.add(`${mx} ${my}`);
        }
      }
      let wanted = 0;
      for (let y = 0; y < 23; y++) {
        for (let x = 0; x < 37; x++) {
          if (x + 1 < 37 && at(x, y) !== at(x + 1, y)) wanted++;
          if (y + 1 < 23 && at(x, y) !== at(x, y + 1)) wanted++;
        }
      }
      expect(sides.size).toBe(wanted);
    }
  });
});

describe('the outlines of whites', () => {
  test('a ring has an outer and an inner outline, through the middles of pixel sides', () => {
    const { size: small, map } = drawn('.....', '.111.', '.1.1.', '.111.');
    const outlines = whiteOutlines(Uint16Array.from(map), small);
    expect(outlines.map(({ points }) => points.length / 2)).toEqual([12, 4]);
    // The other way round, so that the hole is not filled.
    expect(outlines[1]?.points).toEqual([2.5, 3, 3, 2.5, 2.5, 2, 2, 2.5]);
  });

  test('each is that of the white it runs round, at the border of the picture too', () => {
    const { size: small, map } = drawn('1..2', '1.3.', '1..4');
    const outlines = whiteOutlines(Uint16Array.from(map), small);
    expect(outlines.map(({ white, points }) => [white, points.length / 2])).toEqual([
      [0, 8],
      [1, 4],
      [2, 4],
      [3, 4],
    ]);
    expect(outlines[0]?.points.slice(0, 4)).toEqual([0.5, 0, 1, 0.5]);
  });

  test('stand in the order of where they begin, also round a hole that is come upon earlier', () => {
    const order = (...rows: string[]) => {
      const { size: small, map } = drawn(...rows);
      return whiteOutlines(Uint16Array.from(map), small).map(
        ({ white, points }) => `${white}: ${points.slice(0, 2).join(' ')}`,
      );
    };
    // The hole's upper sides are in row 2, but its outline begins at its lowest, in row 5.
    expect(
      order(
        '1111111..',
        '1.....1..',
        '1.....1.2',
        '1.....1..',
        '1111111..',
        '.........',
        '...3.....',
      ),
    ).toEqual(['0: 0.5 0', '1: 8.5 2', '0: 1.5 4', '2: 3.5 6']);
    // Beginning in one row: from left to right, though the hole further right was come upon first.
    expect(order('......111', '......1.1', '......1.1', '....2.111')).toEqual([
      '0: 6.5 0',
      '1: 4.5 3',
      '0: 7.5 3',
    ]);
  });

  test('seeded masks: every side of a white is walked once', () => {
    for (const mask of masks) {
      const at = (x: number, y: number) =>
        x < 0 || y < 0 || x >= 37 || y >= 23 ? 0 : (mask[y * 37 + x] as number);
      let wanted = 0;
      for (let y = -1; y < 23; y++) {
        for (let x = -1; x < 37; x++) {
          if (at(x, y) !== at(x + 1, y)) wanted++;
          if (at(x, y) !== at(x, y + 1)) wanted++;
        }
      }
      const sides = new Set<string>();
      for (const { points } of whiteOutlines(Uint16Array.from(mask), size)) {
        for (let i = 0; i < points.length; i += 2) sides.add(`${points[i]} ${points[i + 1]}`);
      }
      expect(sides.size).toBe(wanted);
    }
  });
});
