import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Lab, tableOf } from '../../../app/core/colour/lab.ts';
import {
  bitmapLayer,
  paledLayer,
  sheetLayer,
  slotLayer,
  whereLayer,
  whereMarksLayer,
  withoutHue,
} from '../../../app/drawing/layers.ts';
import { NotedContext } from '../../support/drawing/noted-context.ts';

// Figures are those of the made pictures; how far a picture is dimmed: (own).

/** Canvases the layers make beside the page, as they were made. */
const aside: NotedContext[] = [];
const global = globalThis as { OffscreenCanvas?: unknown };
const before = global.OffscreenCanvas;
beforeAll(() => {
  global.OffscreenCanvas = class {
    readonly width: number;
    readonly height: number;
    constructor(width: number, height: number) {
      [this.width, this.height] = [width, height];
    }
    getContext(): NotedContext {
      const noted = new NotedContext({ width: this.width, height: this.height });
      aside.push(noted);
      return noted;
    }
  };
});
afterAll(() => {
  global.OffscreenCanvas = before;
});

const size = { width: 4, height: 2 };
const colours: readonly Lab[] = [
  [80, 0, 0],
  [40, 30, 20],
];
const slotMap = Uint8Array.of(0, 0, 1, 1, 0, 1, 1, 9);
const codesOf = (lab: Lab): number[] => [...tableOf([lab])];
const pixel = ({ pixels }: NotedContext, i: number): number[] => [
  ...(pixels?.subarray(4 * i, 4 * i + 4) ?? []),
];

test('a bitmap fills the whole layer', () => {
  const noted = new NotedContext(size);
  const bitmap = {} as ImageBitmap;
  bitmapLayer(bitmap)(noted.context);
  expect(noted.drawn).toMatchObject([{ did: 'drawImage', image: bitmap, with: [0, 0, 4, 2] }]);
});

test('every slot is painted in its colour, what is in none white', () => {
  const noted = new NotedContext(size);
  slotLayer(slotMap, colours)(noted.context);
  expect(noted.put).toEqual([0, 0]);
  for (const [i, slot] of slotMap.entries()) {
    const lab = colours[slot];
    expect(pixel(noted, i)).toEqual(lab ? [...codesOf(lab), 255] : [255, 255, 255, 255]);
  }
});

const soft = {
  ...{ pixels: Uint32Array.of(1), partners: Uint8Array.of(1), shares: Uint8Array.of(128) },
};

test('a sheet is painted with its soft edges, or crisp without', () => {
  const [crisp, blurred] = [null, soft].map((soft) => {
    const noted = new NotedContext(size);
    sheetLayer({ slotMap, soft }, { after: colours })(noted.context);
    return noted;
  }) as [NotedContext, NotedContext];
  expect(crisp.put).toEqual([0, 0]);
  expect(pixel(crisp, 1)).toEqual([...codesOf(colours[0] as Lab), 255]);
  const [light, dark] = colours.map(codesOf) as [number[], number[]];
  // Half and half, to the whole number.
  const half = light.map((code, c) => Math.floor((code + (dark[c] as number)) / 2 + 0.5));
  expect(pixel(blurred, 1)).toEqual([...half, 255]);
  expect(pixel(blurred, 0)).toEqual([...light, 255]);
});

test('a sheet in grey has the lightness of its colours and no hue', () => {
  const noted = new NotedContext(size);
  sheetLayer({ slotMap, soft: null }, { after: colours }, true)(noted.context);
  const [r, g, b] = pixel(noted, 2);
  expect([g, b]).toEqual([r, r]);
  expect(Math.abs((r ?? 0) - (codesOf([40, 0, 0])[0] as number))).toBeLessThanOrEqual(1);
});

test('squares run only where the look has a colour for every row of them', () => {
  const squares = { across: 2, down: 1, sidePx: 2, slots: [0, 0], squares: [0, 1] };
  const paint = (look: number[]): NotedContext => {
    const noted = new NotedContext(size);
    const sheet = { slotMap: new Uint8Array(8), squares, soft: null };
    sheetLayer(sheet, { after: colours, look: Uint8ClampedArray.from(look) })(noted.context);
    return noted;
  };
  const runs = paint([10, 20, 30, 90, 100, 110]);
  expect([pixel(runs, 0), pixel(runs, 3)]).toEqual([
    [10, 20, 30, 255],
    [90, 100, 110, 255],
  ]);
  // A look of another length is that of another reading: slots are flat.
  for (const length of [3, 4, 9])
    expect(pixel(paint(Array(length).fill(10)), 0)).toEqual([...codesOf(colours[0] as Lab), 255]);
});

test('marks are set on the sheet where there are details to set them on', () => {
  const details = { cellPx: 2, shapes: [{ lines: [0, 0, 1] }] };
  const marks = [{ shape: 0, lab: [10, 0, 0] as Lab }];
  const paint = (given: typeof details | undefined) => {
    const noted = new NotedContext({ width: 8, height: 6 });
    sheetLayer(
      { slotMap: new Uint8Array(48), soft: null, ...(given && { details: given }) },
      { after: colours, marks },
    )(noted.context);
    return pixel(noted, 0)[0] as number;
  };
  expect(paint(undefined)).toBe(codesOf(colours[0] as Lab)[0]);
  expect(paint(details)).toBeLessThan(paint(undefined) - 40);
});

test('where to paint: all but the slots shown lies under a flat grey, most of the way', () => {
  const noted = new NotedContext(size);
  whereLayer((under) => under.fillRect(7, 7, 7, 7), slotMap, new Set([1]), 134)(noted.context);
  expect(noted.drawn.map(({ did }) => did)).toEqual(['fillRect', 'drawImage']);
  expect(noted.drawn[1]?.with).toEqual([0, 0]);
  expect(noted.drawn[1]?.image).toMatchObject(size);
  const veil = aside.at(-1) as NotedContext;
  expect(veil.put).toEqual([0, 0]);
  expect(pixel(veil, 0)).toEqual([134, 134, 134, 222]);
  expect(pixel(veil, 2)[3]).toBe(0);
  expect(pixel(veil, 7)).toEqual([134, 134, 134, 222]);
});

test('where to paint small shapes: they and what lies close round them are left out of the grey', () => {
  for (const [side, reach] of [
    [10, 2], // at least
    [1600, 10], // one part in 160
  ] as const) {
    const noted = new NotedContext({ width: side, height: side });
    const grid = { cellPx: 1, shapes: [{ lines: [] }, { lines: [3, 5, 6] }] };
    whereMarksLayer((under) => under.fillRect(7, 7, 7, 7), grid, [1], 134)(noted.context);
    expect(noted.drawn.map(({ did }) => did)).toEqual(['fillRect', 'drawImage']);
    expect(noted.drawn[1]?.with).toEqual([0, 0]);
    const [veil, ...holes] = (aside.at(-1) as NotedContext).drawn;
    expect(veil).toMatchObject({ with: [0, 0, side, side], composite: 'source-over' });
    expect(veil?.fillStyle).toBe(`rgb(134 134 134 / ${222 / 255})`);
    expect(holes.length).toBeGreaterThan(0);
    for (const hole of holes) {
      expect(hole.composite).toBe('destination-out');
      const [x = 0, y = 0, wide, high] = hole.with;
      expect([wide, high]).toEqual([2 * reach + 1, 2 * reach + 1]);
      // The middle of a hole is a pixel of the shape, or the margin it is rounded off in.
      expect(Math.abs(x + reach - 5)).toBeLessThanOrEqual(1);
      expect(Math.abs(y + reach - 3)).toBeLessThanOrEqual(1);
    }
    expect(holes.map(({ with: place }) => place.slice(0, 2))).toContainEqual([
      5 - reach,
      3 - reach,
    ]);
  }
});

test('without hue the lightness stays', () => {
  expect(
    withoutHue([
      [40, 30, -20],
      [90, 1, 2],
    ]),
  ).toEqual([
    [40, 0, 0],
    [90, 0, 0],
  ]);
});

test('a paled picture lies under white of that share, and what follows is not paled', () => {
  const noted = new NotedContext(size);
  paledLayer((under) => under.fillRect(0, 0, 1, 1), 0.4)(noted.context);
  expect(noted.drawn[1]).toMatchObject({ with: [0, 0, 4, 2], alpha: 0.4, fillStyle: 'white' });
  expect(noted.globalAlpha).toBe(1);
});
