import { expect, test } from 'vitest';
import { labOfRgb } from '../../../../app/core/colour/lab.ts';
import {
  asNotan,
  pictureLayers,
  singleBandLayer,
  valuesLayer,
} from '../../../../app/ui/picture/picture-layers.ts';
import { NotedContext } from '../../../support/drawing/noted-context.ts';

// Lightnesses are those of the slots made here; what is not looked at is L* 62, what is, 12 (own).
const seen = {
  slotMap: Uint8Array.of(0, 1, 2, 2),
  reading: {
    range: { mode: 'kept', lo: 0, hi: 100, dark: 30, darkest: 20, paper: 96 },
    bands: [{ lightness: 90 }, { lightness: 60 }, { lightness: 40 }],
    slots: [1, 2, 3].map((band) => ({ passage: 'sheet', band, lab: [10 * band, 5, 5] })),
  },
} as unknown as Parameters<typeof valuesLayer>[0];

const lightnesses = (layer: ReturnType<typeof valuesLayer>): number[] => {
  const noted = new NotedContext({ width: 4, height: 1 });
  layer(noted.context);
  return [0, 1, 2, 3].map((i) => {
    const [r = 0, g = 0, b = 0] = noted.pixels?.subarray(4 * i, 4 * i + 3) ?? [];
    expect([g, b]).toEqual([r, r]);
    return Math.round(labOfRgb([r, g, b])[0]);
  });
};

test('few values: the lightest is the paper, the darkest the darkest paint, the rest between as they were', () => {
  const values = [90, 60, 40].map((lightness) => ({ lightness }));
  const tone = { dark: 30, darkest: 20, paper: 96 };
  expect(asNotan(values, tone).map(({ lightness }) => lightness)).toEqual([
    96,
    expect.closeTo(20 + (20 / 50) * 76, 9),
    20,
  ]);
  // Plans from before knew only how dark a wash gets.
  expect(asNotan(values, { dark: 30, paper: 96 })[2]?.lightness).toBe(30);
  // Of one value there is nothing to spread.
  expect(asNotan([{ lightness: 50 }, { lightness: 50 }], tone)).toEqual([
    { lightness: 50 },
    { lightness: 50 },
  ]);
});

test('the picture in its values is grey, every slot in that of its band', () => {
  expect(lightnesses(valuesLayer(seen))).toEqual([96, 50, 20, 20]);
});

test('a band alone stands dark in a plain grey', () => {
  expect(lightnesses(singleBandLayer(seen, 2))).toEqual([62, 12, 62, 62]);
});

test('colour and grey are the pictures as they came', () => {
  const [reference, grey] = [{}, {}] as [ImageBitmap, ImageBitmap];
  const layers = pictureLayers({ reference, grey } as never);
  for (const [layer, image] of [
    [layers.colour, reference],
    [layers.grey, grey],
  ] as const) {
    const noted = new NotedContext({ width: 4, height: 1 });
    layer(noted.context);
    expect(noted.drawn[0]?.image).toBe(image);
  }
});
