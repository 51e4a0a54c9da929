import { describe, expect, test } from 'vitest';
import { linearOfLab, type Point } from '../../../../app/core/colour/lab.ts';
import { type LightCell, lightCells } from '../../../../app/core/compare/light-cells.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

// A squared sheet of the tests' own: 48 by 24 px with a verge of 8 px, which cells of 6 px do not divide, so that some
// lie across its sides. Where cells lie is counted by hand; the limits are the file's own figures, each tried on either
// side of it (own).
const size = { width: 48, height: 24 };
const margin = 8;
const [across, down] = [size.width + 2 * margin, size.height + 2 * margin];
const paper = [96, 0, 2] as const;
const grey = [50, 0, 0] as const;

type Colour = readonly [number, number, number];

interface Told {
  /** Linear light of the photo at px of the squared raster; and the sheet that was expected at px of its own. */
  readonly light?: (x: number, y: number) => Colour;
  readonly expected?: (x: number, y: number) => Colour;
  readonly bare?: readonly Point[];
}

function cellsOf({ light = () => [0.3, 0.3, 0.3], expected = () => grey, bare = [] }: Told) {
  const raster = emptyRaster(across, down);
  for (let i = 0; i < across * down; i++) {
    const [red, green, blue] = light(i % across, Math.floor(i / across));
    raster.red[i] = red;
    raster.green[i] = green;
    raster.blue[i] = blue;
  }
  const planes = [0, 1, 2].map((c) =>
    Float32Array.from({ length: size.width * size.height }, (_, i) =>
      Number(expected(i % size.width, Math.floor(i / size.width))[c]),
    ),
  );
  const [lightness, a, b] = planes as [Float32Array, Float32Array, Float32Array];
  return lightCells({ raster, margin, size }, { lightness, a, b }, paper, bare);
}

/** Upper left corner of a cell on the sheet, px. */
const cornerOf = ({ x, y }: LightCell): readonly [number, number] => [
  Math.round(24 * x + size.width / 2 - 3),
  Math.round(24 * y + size.height / 2 - 3),
];
const inside = (cells: readonly LightCell[]) => cells.filter(({ kind }) => kind !== 'verge');
const at = (cells: readonly LightCell[], x: number, y: number) =>
  cells.find((cell) => cornerOf(cell).join() === `${x},${y}`);
const kindAt = (cells: readonly LightCell[], x: number, y: number) => at(cells, x, y)?.kind;

describe('where cells lie', () => {
  const cells = cellsOf({});

  test('wholly on the sheet or wholly beside it, none across a side', () => {
    // Columns begin at -8, -2, 4 ... 46, 50?: of those from -8 in steps of 6 seven lie on the sheet, rows three.
    expect(inside(cells).map(cornerOf)).toEqual(
      [4, 10, 16].flatMap((y) => [4, 10, 16, 22, 28, 34, 40].map((x) => [x, y])),
    );
    const verge = cells.filter(({ kind }) => kind === 'verge').map(cornerOf);
    expect(verge.every(([x, y]) => x === -8 || y === -8)).toBe(true);
    expect(verge).toHaveLength(10 + 5);
  });

  test('are told from the middle of the sheet, 1 at the ends of its long side', () => {
    const corner = at(cells, 4, 4);
    expect(corner?.x).toBeCloseTo((7 - 24) / 24, 10);
    expect(corner?.y).toBeCloseTo((7 - 12) / 24, 10);
  });

  test('a cell that ends where the verge begins, or begins a px beyond the sheet, is of the verge', () => {
    const raster = emptyRaster(36, 36);
    for (const plane of [raster.red, raster.green, raster.blue]) plane.fill(0.3);
    const flat = () => new Float32Array(11 * 11).fill(50);
    const square = { raster, margin: 13, size: { width: 11, height: 11 } };
    const found = lightCells(square, { lightness: flat(), a: flat(), b: flat() }, paper);
    // Of a sheet of 11 px -7 ends at -1, which is beside it; -1 lies across its side, 5 on it, 11 touches it.
    const row = found.filter(({ y }) => Math.abs(5.5 * y + 5.5 - 3 - 5) < 0.1);
    expect(row.map(({ x }) => Math.round(5.5 * x + 5.5 - 3))).toEqual([-13, -7, 5, 17]);
    expect(row.map(({ kind }) => kind)).toEqual(['verge', 'verge', 'paint', 'verge']);
  });
});

describe('what a cell tells', () => {
  test('its mean light, and that of the colour expected there', () => {
    const cells = cellsOf({
      light: (x) => [x / 100, 2 * (x / 100), 0.1],
      expected: () => [50, 0, 0],
    });
    const cell = at(cells, 10, 10);
    // Columns 18 to 23 of the raster: 20.5 on the mean.
    expect(cell?.light[0]).toBeCloseTo(0.205, 5);
    expect(cell?.light[1]).toBeCloseTo(0.41, 5);
    expect(cell?.light[2]).toBeCloseTo(0.1, 5);
    // L* 50 is 18.42 % of white (ISO/CIE 11664-4, 2019).
    for (const light of cell?.expected ?? [0]) expect(light).toBeCloseTo(0.18419, 4);
    expect(cell?.lightness).toBe(50);
  });

  test('of the verge: paper is expected there', () => {
    const cell = at(cellsOf({}), -8, -8);
    expect(cell?.lightness).toBe(96);
    expect(cell?.expected).toEqual(linearOfLab(paper));
    expect(Number(cell?.expected[2])).toBeLessThan(Number(cell?.expected[0])); // it is a little yellow
  });
});

/** Of the cell at (10, 10) of the sheet: the first so many of its 36 px, row by row. */
const first =
  (count: number, offset = 0) =>
  (x: number, y: number): boolean => {
    const [column, row] = [x - 10 - offset, y - 10 - offset];
    return column >= 0 && row >= 0 && column < 6 && row < 6 && 6 * row + column < count;
  };

describe('cells that say nothing are left out', () => {
  test('more than a tenth of it at the end of the scale, whichever channel', () => {
    // Code 252 of 255 is a light of 0.974 (IEC 61966-2-1, 1999).
    for (const end of [
      [0.975, 0.3, 0.3],
      [0.3, 0.975, 0.3],
      [0.3, 0.3, 0.975],
    ] as const) {
      const clipped = (count: number) =>
        cellsOf({
          light: (x, y) => (first(count, margin)(x, y) ? end : [0.3, 0.3, 0.3]),
        });
      expect(kindAt(clipped(3), 10, 10)).toBe('paint');
      expect(kindAt(clipped(4), 10, 10)).toBeUndefined();
      expect(inside(clipped(4))).toHaveLength(20);
    }
    const nearly = cellsOf({ light: () => [0.97, 0.97, 0.97] });
    expect(inside(nearly)).toHaveLength(21);
  });

  test('a part of it off the photo', () => {
    const cells = cellsOf({
      light: (x, y) =>
        first(1, margin)(x, y) ? [Number.NaN, Number.NaN, Number.NaN] : [0.3, 0.3, 0.3],
    });
    expect(kindAt(cells, 10, 10)).toBeUndefined();
    expect(inside(cells)).toHaveLength(20);
  });

  test('an edge of the expected sheet through it: a spread beyond 2.5 L*', () => {
    const edged = (half: number) =>
      cellsOf({
        expected: (x, y) =>
          first(36)(x, y) ? [first(18)(x, y) ? 50 + half : 50 - half, 0, 0] : [50, 0, 0],
      });
    expect(kindAt(edged(2.4), 10, 10)).toBe('paint');
    expect(at(edged(2.4), 10, 10)?.lightness).toBeCloseTo(50, 5);
    expect(kindAt(edged(2.6), 10, 10)).toBeUndefined();
  });

  test('an edge of tape or board through a cell of the verge: light that spreads by more than 8 %', () => {
    const edged = (share: number) =>
      cellsOf({
        light: (x, y) => {
          const light = x < 6 && y < 6 ? 0.3 * (y < 3 ? 1 + share : 1 - share) : 0.3;
          return [light, light, light];
        },
      });
    expect(kindAt(edged(0.075), -8, -8)).toBe('verge');
    expect(kindAt(edged(0.085), -8, -8)).toBeUndefined();
    // On the sheet it is grain: how her washes spread is no reason to leave them out.
    const grained = cellsOf({
      light: (_, y) => (y % 2 === 0 ? [0.4, 0.4, 0.4] : [0.2, 0.2, 0.2]),
    });
    expect(inside(grained)).toHaveLength(21);
    expect(grained).toHaveLength(21);
  });
});

describe('bare paper', () => {
  test('is what the plan has within 1.5 of the paper, all of the cell', () => {
    const tinted = (by: Colour) =>
      cellsOf({ expected: () => [paper[0] + by[0], paper[1] + by[1], paper[2] + by[2]] });
    const aside: readonly Colour[] = [
      [-1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    for (const [l, a, b] of aside) {
      expect(kindAt(tinted([1.4 * l, 1.4 * a, 1.4 * b]), 10, 10)).toBe('paper');
      expect(kindAt(tinted([1.6 * l, 1.6 * a, 1.6 * b]), 10, 10)).toBe('paint');
    }
    const touched = cellsOf({ expected: (x, y) => (first(1)(x, y) ? [93, 0, 2] : paper) });
    expect(kindAt(touched, 10, 10)).toBe('paint');
    expect(kindAt(touched, 16, 10)).toBe('paper');
  });

  test('is where she says so, within 9 px of her finger, whatever the plan has there', () => {
    // Her finger in the middle of the cell at (10, 10), whose neighbours are 6 px and 8.5 px away, the next ones 12.
    const cells = cellsOf({ bare: [[13 / 48, 13 / 24]] });
    const shown = cells.filter(({ kind }) => kind === 'paper').map(cornerOf);
    expect(shown).toEqual([4, 10, 16].flatMap((y) => [4, 10, 16].map((x) => [x, y])));
    expect(at(cells, 10, 10)?.lightness).toBe(96);
    expect(at(cells, 22, 10)?.lightness).toBe(50);
    const beside = cellsOf({ bare: [[-5 / 48, -5 / 24]] });
    expect(kindAt(beside, -8, -8)).toBe('paper');
  });

  test('that she shows counts though an edge of tape runs through it', () => {
    const light = (_: number, y: number): Colour => (y < 3 ? [0.5, 0.5, 0.5] : [0.3, 0.3, 0.3]);
    expect(kindAt(cellsOf({ light }), -8, -8)).toBeUndefined();
    expect(kindAt(cellsOf({ light, bare: [[-5 / 48, -5 / 24]] }), -8, -8)).toBe('paper');
  });
});
