import { describe, expect, test } from 'vitest';
import type { Edge } from '../../../../../app/core/reading/edges/edge.ts';
import type { Border, ToneRange } from '../../../../../app/core/reading/reading.ts';
import { CellTones, groupOf, packCell } from '../../../../../app/core/reading/shapes/cells.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import {
  brushWhites,
  edgesOfBrushed,
  withBrushedWhites,
} from '../../../../../app/core/reading/whites/brush-whites.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

/** The sheet is the picture's own scale, the paper 100: a near neutral cell a few L* from it stays paper. */
const range: ToneRange = { mode: 'photographed', lo: 0, hi: 100, dark: 0, paper: 100 };

/** One pixel a cell: band, family, passage, and its colour. */
type Pixel = readonly [
  band: number,
  family: number,
  passage: number,
  lightness: number,
  a: number,
  b: number,
];

function tonesOf(pixels: readonly Pixel[]) {
  const cells = Uint8Array.from(pixels, ([band, family, passage]) =>
    packCell(groupOf(band, passage), family),
  );
  const plane = (of: 3 | 4 | 5) => Float32Array.from(pixels, (pixel) => pixel[of]);
  const tones = new CellTones(cells, { lightness: plane(3), a: plane(4), b: plane(5) });
  return { cells, tones };
}

/** What the first pixel becomes when she paints over it: band and family. */
function paintedOver(pixels: readonly Pixel[]): readonly [band: number, family: number] {
  const { cells, tones } = tonesOf(pixels);
  const bands = Uint8Array.from(pixels, ([band]) => band);
  const dab = { mode: 'paint', path: [[0.5 / pixels.length, 0.5]], brush: 0.0001 } as const;
  brushWhites({ cells, bands }, [dab], { width: pixels.length, height: 1 }, tones, range);
  expect(cells[0]).toBe(
    packCell(groupOf(bands[0] as number, pixels[0]?.[2] ?? 0), (cells[0] as number) % 8),
  );
  return [bands[0] as number, (cells[0] as number) % 8];
}

describe('painted over, a white', () => {
  // The white's colour is (5, 2). Distances: family 1 (0, 0) 5.4, family 2 (4, 3) 1.4, family 3 (5, -2) 4.
  const white: Pixel = [1, 5, 0, 98, 5, 2];
  const light: readonly Pixel[] = [
    [2, 1, 0, 70, 0, 0],
    [2, 2, 0, 70, 4, 3],
    [2, 3, 0, 70, 5, -2],
  ];

  test('goes to the family nearest in colour of the lightest painted band', () => {
    expect(paintedOver([white, ...light])).toEqual([2, 2]);
    // A darker band is not asked, though its colour is the white's own.
    expect(paintedOver([white, ...light, [3, 4, 0, 40, 5, 2]])).toEqual([2, 2]);
  });

  test('of two families as near goes to the lower one', () => {
    // (5, 4.5) and (5, -0.5) are both 2.5 from (5, 2).
    expect(paintedOver([white, [2, 1, 0, 70, 5, 4.5], [2, 2, 0, 70, 5, -0.5]])).toEqual([2, 1]);
  });

  test('goes to its own family where the band has it, however far the colour', () => {
    expect(paintedOver([white, ...light, [2, 5, 0, 70, -40, -40]])).toEqual([2, 5]);
  });

  test('never goes to another passage', () => {
    // The lightest band of the ground is 3; band 2 is the subject's.
    expect(paintedOver([white, [2, 2, 1, 70, 5, 2], [3, 1, 0, 50, 0, 0]])).toEqual([3, 1]);
    expect(paintedOver([white, [2, 2, 1, 70, 5, 2]])).toEqual([1, 5]);
  });

  test('stays as it is where it is no white', () => {
    expect(paintedOver([[1, 5, 0, 88, 5, 2], ...light])).toEqual([1, 5]);
    expect(paintedOver([[1, 5, 0, 96, 5, 2], ...light])).toEqual([2, 2]);
  });
});

describe('where her brush goes', () => {
  /** A mid everywhere on 6 x 4 px: what is kept of it, row by row. */
  function kept(path: readonly (readonly [number, number])[], brush: number): string[] {
    const cells = new Uint8Array(24).fill(packCell(3, 1));
    const bands = new Uint8Array(24).fill(3);
    const planes = {
      lightness: new Float32Array(24).fill(50),
      a: new Float32Array(24),
      b: new Float32Array(24),
    };
    const px = path.map(([x, y]) => [x / 6, y / 4] as const);
    brushWhites(
      { cells, bands },
      [{ mode: 'keep', path: px, brush: brush / 6 }],
      { width: 6, height: 4 },
      new CellTones(cells, planes),
      range,
    );
    return [0, 1, 2, 3].map((y) =>
      Array.from(bands.subarray(6 * y, 6 * y + 6), (band) => (band === 0 ? '#' : '.')).join(''),
    );
  }

  test('it is as wide as it is said to be, in px of the long side', () => {
    // From the middle of px (2, 1): 3 px wide takes what lies within 1.5.
    expect(kept([[2.5, 1.5]], 3)).toEqual(['.###..', '.###..', '.###..', '......']);
    expect(kept([[2.5, 1.5]], 2.1)).toEqual(['..#...', '.###..', '..#...', '......']);
  });

  test('thin as a hair it still takes a pixel, and one alone where the next is 0.8 px away', () => {
    expect(kept([[2.7, 1.5]], 0.01)).toEqual(['......', '..#...', '......', '......']);
    expect(kept([[3, 2]], 0.01)).toEqual(['......', '..##..', '..##..', '......']);
  });

  test('without a width it is a closed line round what is kept', () => {
    const round = [
      [1, 1],
      [4, 1],
      [4, 3],
      [1, 3],
    ] as const;
    expect(kept(round, 0)).toEqual(['......', '.###..', '.###..', '......']);
  });
});

test('kept, a place becomes a white of the commonest family of its own passage', () => {
  const pixels: readonly Pixel[] = [
    [3, 1, 0, 50, 0, 0],
    [3, 2, 0, 50, 0, 0],
    [4, 2, 0, 50, 0, 0], // family 2 twice in the ground
    [3, 4, 1, 50, 0, 0],
    [3, 3, 1, 50, 0, 0], // 3 and 4 once each in the subject: the lower
  ];
  const { cells, tones } = tonesOf(pixels);
  const bands = Uint8Array.from(pixels, ([band]) => band);
  const all = {
    mode: 'keep',
    path: [
      [0, 0.5],
      [1, 0.5],
    ],
    brush: 1,
  } as const;
  brushWhites({ cells, bands }, [all], { width: 5, height: 1 }, tones, range);
  expect([...cells]).toEqual([2, 2, 2, 8 * 8 + 3, 8 * 8 + 3]);
  expect([...bands]).toEqual([0, 0, 0, 0, 0]);
});

describe('pixels of her whites', () => {
  const { tones } = tonesOf([
    [2, 1, 0, 70, 0, 0],
    [4, 1, 0, 30, 0, 0],
  ]);
  const counted = (...areas: number[]): number[] => [
    ...withBrushedWhites(
      Uint32Array.from({ length: 9 }, (_, i) => areas[i] ?? 0),
      tones,
    ).slice(0, 6),
  ];

  test('count to the lightest band that has some of its own', () => {
    expect(counted(7, 0, 0, 5, 9)).toEqual([0, 0, 0, 12, 9, 0]);
  });

  test('count to the lightest band of the picture where all is hers', () => {
    expect(counted(7)).toEqual([0, 0, 7, 0, 0, 0]);
  });

  test('of a single pixel too, and to the very lightest band', () => {
    expect(counted(1, 3, 5)).toEqual([0, 4, 5, 0, 0, 0]);
  });

  test('without any the counts stay', () => expect(counted(0, 3, 4)).toEqual([0, 3, 4, 0, 0, 0]));
});

describe('edges round a white of hers', () => {
  const [plain] = madeReading(tableOf([50], [[0, 0]])).slots;
  const slot = (lightness: number, reserve: boolean, byHand: boolean): Slot => ({
    ...(plain as Slot),
    lab: [lightness, 0, 0],
    target: [lightness, 0, 0],
    reserve,
    ...(byHand && { byHand }),
  });
  /** Her white, a white of the photo, a light, a mid and a tone 3 L* under the paper. */
  const slots = [
    slot(95, true, true),
    slot(93, true, false),
    slot(88, false, false),
    slot(50, false, false),
    slot(92, false, false),
  ];
  const edge = (a: number, b: number): Edge => ({
    a,
    b,
    kind: 'soft',
    graded: true,
    heldByColour: true,
    outOfFocus: true,
    contrast: 22,
    widthMm: 9,
    widthShare: 0.02,
    lengthMm: 30,
    path: [],
  });
  const border = (a: number, b: number): Border => ({
    a,
    b,
    lengthMm: 30,
    contrast: 22,
    soft: 0.7,
    lost: 0.2,
  });
  const of = (a: number, b: number) => {
    const { edges, borders } = edgesOfBrushed(
      { edges: [edge(a, b)], borders: [border(a, b)] },
      slots,
    );
    return { edge: edges[0], border: borders[0] };
  };

  test.each([
    ['her white and a mid', 0, 3, 45, 'hard', 0],
    ['a mid and her white', 3, 0, 45, 'hard', 0],
    ['her white and a light 7 below', 0, 2, 7, 'found', 0],
    ['her white and a tone 3 below', 0, 4, 3, 'lost', 1],
    ['two whites, one of them hers', 0, 1, 0, 'lost', 1],
  ] as const)('%s', (_, a, b, contrast, kind, lost) => {
    const found = of(a, b);
    expect(found.edge).toEqual({
      ...edge(a, b),
      kind,
      contrast,
      widthMm: 0,
      widthShare: 0,
      graded: false,
      outOfFocus: false,
      heldByColour: false,
    });
    expect(found.border).toEqual({ ...border(a, b), contrast, soft: 0, lost });
  });

  test.each([
    ['a white of the photo and a mid', 1, 3],
    ['a mid and a slot that is not there', 3, 9],
  ])('%s stay as measured', (_, a, b) => {
    expect(of(a, b)).toEqual({ edge: edge(a, b), border: border(a, b) });
  });
});
