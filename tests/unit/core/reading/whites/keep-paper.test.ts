import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { groupOf, packCell, paperGroup } from '../../../../../app/core/reading/shapes/cells.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';
import { keepPaper } from '../../../../../app/core/reading/whites/keep-paper.ts';

const paper = 95;
const light = (family: number, passage = 0): number => packCell(groupOf(1, passage), family);

function kept(
  pixels: readonly (readonly [cell: number, lab: Lab])[],
  mode = 'photographed' as 'photographed' | 'opened',
) {
  const cells = Uint8Array.from(pixels, ([cell]) => cell);
  const plane = (n: 0 | 1 | 2) => Float32Array.from(pixels, ([, lab]) => lab[n]);
  const planes = { lightness: plane(0), a: plane(1), b: plane(2) };
  keepPaper(
    cells,
    planes,
    toneRange(mode, 20, 80, 15, paper),
    { width: pixels.length, height: 1 },
    1,
  );
  return [...cells];
}

test('what is planned within 5 L* of the paper and has less than C* 8, in the lightest band', () => {
  const isKept = (lab: Lab, cell = light(2)) => kept([[cell, lab]])[0] !== cell;
  expect(isKept([97, 0, 0])).toBe(true);
  expect(isKept([90.4, 0, 0])).toBe(true);
  expect(isKept([89.6, 0, 0])).toBe(false);
  expect(isKept([97, 4.7, -6.3])).toBe(true); // C* 7.86
  expect(isKept([97, 4.9, -6.4])).toBe(false); // C* 8.06
  expect(isKept([97, 0, 0], packCell(groupOf(2, 0), 2))).toBe(false);
});

test('where the photo is opened up, as it will be on the sheet', () => {
  const pixels = [[light(0), [78, 0, 0]]] as const;
  expect(kept(pixels)).toEqual([light(0)]);
  expect(kept(pixels, 'opened')).toEqual([packCell(paperGroup(0), 0)]);
});

test('is one cell in every passage, of the family most of it had', () => {
  const white: Lab = [96, 0, 0];
  const found = kept([
    [light(3), white],
    [light(5), white],
    [light(5), white],
    [light(5), [70, 0, 0]],
    [light(6, 1), white],
  ]);
  const ground = packCell(paperGroup(0), 5);
  expect(found).toEqual([ground, ground, ground, light(5), packCell(paperGroup(1), 6)]);
});

test('a rim takes the colour of the paper beside it, so that a white is as light as its own pixels', () => {
  const darker = packCell(groupOf(2, 0), 0);
  const cells = Uint8Array.from([darker, light(0), light(0), light(0), light(0), darker]);
  const planes = {
    lightness: Float32Array.from([60, 80, 98, 97, 85, 60]),
    a: new Float32Array(6),
    b: Float32Array.from([20, 9, 2, 1, 12, 20]),
  };
  const range = toneRange('photographed', 20, 80, 15, paper);
  keepPaper(cells, planes, range, { width: 6, height: 1 }, 1);
  expect([...planes.lightness]).toEqual([60, 98, 98, 97, 97, 60]);
  expect([...planes.b]).toEqual([20, 2, 2, 1, 1, 20]);
});

test('a rim between paper and what is darker is paper; a wider stretch, or one within paper, is painted', () => {
  const white: Lab = [97, 0, 0];
  const cream: Lab = [90, 0, 20];
  const darker = packCell(groupOf(2, 0), 0);
  const row = (between: number, end: number) =>
    kept([
      [light(0), white],
      ...Array.from({ length: between }, () => [light(0), cream] as const),
      [end, end === darker ? [60, 0, 20] : white],
    ]).slice(1, -1);
  const paperCell = packCell(paperGroup(0), 0);
  expect(row(3, darker)).toEqual([paperCell, paperCell, paperCell]);
  expect(row(4, darker)).toEqual([light(0), light(0), light(0), light(0)]);
  expect(row(2, light(0))).toEqual([light(0), light(0)]);
});
