import { expect, test } from 'vitest';
import { refineLine } from '../../../../../app/core/reading/subject/refine-line.ts';
import type { SubjectStroke } from '../../../../../app/core/reading/subject/subject.ts';
import {
  type ColourBytes,
  colourBinAt,
} from '../../../../../app/core/reading/subject/subject-colours.ts';

const cellPx = 4;
const cells = { width: 6, height: 5 };
const size = { width: cells.width * cellPx, height: cells.height * cellPx };

type Place = (x: number, y: number) => boolean;

/** A picture of two colours: where it is light, by px. */
function coloured(isLight: Place): ColourBytes {
  const px = size.width * size.height;
  const lightness = Uint8ClampedArray.from({ length: px }, (_, i) =>
    isLight(i % size.width, Math.floor(i / size.width)) ? 200 : 60,
  );
  return { size, lightness, a: new Int8Array(px), b: new Int8Array(px) };
}

/** The line at full size where light speaks for subject; `isCoarse` by cell. */
function refine(isLight: Place, isCoarse: Place, strokes: SubjectStroke[] = []): boolean[] {
  const colours = coloured(isLight);
  const sides = Uint8Array.from({ length: cells.width * cells.height }, (_, cell) =>
    isCoarse(cell % cells.width, Math.floor(cell / cells.width)) ? 1 : 0,
  );
  const favour = new Float32Array(1 << 17);
  colours.lightness.forEach((code, i) => {
    favour[colourBinAt(colours, i)] = code === 200 ? 4 : -4;
  });
  const near = { colours, sides, cells, cellPx, strokes, left: 0, top: 0 };
  return [...refineLine(near, favour)].map((side) => side === 1);
}

const everywhere = (place: Place): boolean[] =>
  Array.from({ length: size.width * size.height }, (_, i) =>
    place(i % size.width, Math.floor(i / size.width)),
  );

// The coarse line runs along cells, the true one 3 px to either side of it.
const across = [-3, 3].flatMap((off) => [1, 2, 3, 4].map((row) => [row, off] as const));
test.each(across)('a line below row %i of the cells moves by %i px', (row, off) => {
  const isLight: Place = (_, y) => y >= row * cellPx + off;
  expect(refine(isLight, (_, y) => y >= row)).toEqual(everywhere(isLight));
  const isDark: Place = (x, y) => !isLight(x, y);
  expect(refine(isDark, (_, y) => y < row)).toEqual(everywhere(isDark));
});

const down = [-3, 3].flatMap((off) => [1, 2, 3, 4, 5].map((column) => [column, off] as const));
test.each(down)('a line right of column %i of the cells moves by %i px', (column, off) => {
  const isLight: Place = (x) => x >= column * cellPx + off;
  expect(refine(isLight, (x) => x >= column)).toEqual(everywhere(isLight));
  const isDark: Place = (x, y) => !isLight(x, y);
  expect(refine(isDark, (x) => x < column)).toEqual(everywhere(isDark));
});

test('cells away from the line stay what they are, whatever their colour', () => {
  // All light: the line moves by the one cell beside it and no farther.
  expect(
    refine(
      () => true,
      (x) => x >= 4,
    ),
  ).toEqual(everywhere((x) => x >= 3 * cellPx));
  expect(
    refine(
      () => true,
      (_, y) => y < 2,
    ),
  ).toEqual(everywhere((_, y) => y < 3 * cellPx));
});

test('her brush counts more than colours and cells, as wide as it is', () => {
  const path = [[0.75, 0.5]] as const;
  const none: Place = () => false;
  const added = refine(none, none, [{ mode: 'add', path, brush: 0.25 }]);
  // A brush of 6 px of the long side 24: within 3 px of its middle, 17.5 and 9.5 in px numbers.
  const isPainted: Place = (x, y) => Math.hypot(x - 17.5, y - 9.5) <= 3;
  expect(added).toEqual(everywhere(isPainted));
  const all: Place = () => true;
  const taken = refine(all, all, [{ mode: 'take', path, brush: 0.25 }]);
  expect(taken).toEqual(everywhere((x, y) => !isPainted(x, y)));
  const thin = refine(none, none, [{ mode: 'add', path, brush: 0.001 }]);
  expect(thin.filter(Boolean)).toHaveLength(4);
});
