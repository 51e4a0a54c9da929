import { expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { shortSide } from '../../../../../app/core/raster/size.ts';
import type { Edge } from '../../../../../app/core/reading/edges/edge.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { findWhites } from '../../../../../app/core/reading/whites/find-whites.ts';
import { seeded } from '../../../../support/reading/seeded.ts';
import { slowWhites } from '../../../../support/reading/slow-whites.ts';

const slot = (changes: Partial<Slot> = {}): Slot => ({
  passage: 'sheet',
  band: 1,
  family: 1,
  share: 0.25,
  lab: [90, 0, 0],
  target: [90, 0, 0],
  reserve: false,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 1,
  ...changes,
});

const found = (
  slotMap: Uint8Array,
  slots: readonly Slot[],
  edges: Edge[] = [],
  borders: Border[] = [],
) => ({
  slotMap,
  slots,
  edges,
  borders,
});

// Limits and figures are (own): the docstrings of what is tested say why.
test('areas, outlines and places as the slow way finds them', () => {
  const random = seeded(7);
  for (const [width, height, filled] of [
    [40, 30, 0.45],
    [31, 17, 0.62],
    [25, 25, 0.9],
    [1, 40, 0.5],
    [40, 1, 0.5],
    [12, 9, 1],
  ] as const) {
    const size = { width, height };
    // Two kinds of white and one of paint: whites hold together whatever their slot.
    const slots = [slot({ reserve: true }), slot(), slot({ reserve: true, family: 2 })];
    const slotMap = Uint8Array.from({ length: width * height }, () =>
      random() < filled ? (random() < 0.5 ? 0 : 2) : 1,
    );
    const slow = slowWhites(
      slotMap.map((one) => (slots[one]?.reserve ? 1 : 0)),
      size,
    ).sort((one, other) => other.pixels.length - one.pixels.length);
    const whites = runToEnd(findWhites(found(slotMap, slots), size, 2));
    expect(whites).toHaveLength(slow.length);
    for (const [i, white] of whites.entries()) {
      const { pixels, sides, deepest } = slow[i] as (typeof slow)[number];
      expect(white.areaMm2).toBe(pixels.length / 4);
      const outline = (sides * Math.PI) / 4;
      expect(white.shortSideMm).toBeCloseTo(shortSide(pixels.length, outline) / 2, 9);
      const place = Math.floor(white.at[1] * height) * width + Math.floor(white.at[0] * width);
      expect(deepest).toContain(place);
      expect(white.slot).toBe(slotMap[place]);
    }
  }
});

test('the place lies in the middle of a long white, not at its end', () => {
  const slotMap = new Uint8Array(60 * 20).fill(1);
  for (let y = 6; y < 13; y++) slotMap.fill(0, y * 60 + 5, y * 60 + 54);
  const [white] = runToEnd(
    findWhites(found(slotMap, [slot({ reserve: true }), slot()]), { width: 60, height: 20 }, 1),
  );
  expect(white?.at).toEqual([29.5 / 60, 9.5 / 20]);
});

const size = { width: 40, height: 20 };
/** A white left and one right, paint between. */
const twoWhites = Uint8Array.from({ length: 800 }, (_, i) =>
  i % 40 < 10 ? 0 : i % 40 >= 32 ? 2 : 1,
);
const edge = (a: number, b: number, x: number, kind: Edge['kind'], from = 0, to = 1): Edge => ({
  a,
  b,
  kind,
  graded: false,
  heldByColour: false,
  outOfFocus: false,
  contrast: 20,
  widthMm: 1,
  widthShare: 0.01,
  lengthMm: 20 * (to - from),
  path: [
    [x / 40, from],
    [x / 40, to],
  ],
});

test('soft shares go to the white each edge runs along', () => {
  const slots = [slot({ reserve: true }), slot(), slot({ reserve: true, byHand: true })];
  const edges = [
    edge(0, 1, 10, 'soft', 0, 0.5),
    edge(0, 1, 10, 'hard', 0.5, 1),
    edge(1, 2, 32, 'lost'),
  ];
  const whites = runToEnd(findWhites(found(twoWhites, slots, edges), size, 1));
  expect(whites.map(({ softShare, byHand }) => [softShare, byHand])).toEqual([
    [0.5, false],
    [1, true],
  ]);
});

test('nothing white, nothing listed', () => {
  expect(runToEnd(findWhites(found(twoWhites, [slot(), slot(), slot()]), size, 1))).toEqual([]);
});

test('a wet first wash asks for masks over small whites, passage by passage', () => {
  const border = (a: number, b: number, soft: number): Border => ({
    a,
    b,
    lengthMm: 100,
    contrast: 20,
    soft,
    lost: 0,
  });
  const slots = [
    slot({ reserve: true, passage: 'ground' }),
    slot({ passage: 'ground' }),
    slot({ reserve: true, passage: 'subject' }),
    slot({ passage: 'subject' }),
  ];
  const map = Uint8Array.from({ length: 800 }, (_, i) => {
    const [x, y] = [i % 40, Math.floor(i / 40)];
    const inside = y >= 8 && y < 10;
    if (x < 20) return inside && x > 6 && x < 10 ? 0 : 1;
    return inside && x > 26 && x < 30 ? 2 : 3;
  });
  const borders = [border(0, 1, 0.8), border(2, 3, 0.1)];
  const ways = runToEnd(findWhites(found(map, slots, [], borders), size, 1)).map(
    ({ slot: of, way }) => [of, way] as const,
  );
  expect(ways).toEqual([
    [0, 'mask'],
    [2, 'round'],
  ]);
});
