import { expect, test } from 'vitest';
import {
  lightnessOfLuminance,
  luminanceOfLightness,
} from '../../../../app/core/colour/lightness.ts';
import { castShadow } from '../../../../app/core/compare/cast-shadow.ts';
import type { MeasuredSheet } from '../../../../app/core/compare/measured-sheet.ts';

// A sheet of four upright stripes, each a slot; the rims and limits are made by this test (own).
const size = { width: 360, height: 240 };
const stripes = [92, 70, 50, 35] as const;
const count = size.width * size.height;
const slotMap = Uint8Array.from({ length: count }, (_, i) => Math.floor((i % size.width) / 90));
const expected = { lightness: Float32Array.from(slotMap, (slot) => stripes[slot] as number) };

/** The sheet with so much of the light left in each pixel. */
function seenBy(left: (x: number, y: number, slot: number) => number): MeasuredSheet {
  const lightness = expected.lightness.map((own, i) => {
    const share = left(i % size.width, Math.floor(i / size.width), slotMap[i] as number);
    return lightnessOfLuminance(share * luminanceOfLightness(own));
  });
  const [a, b, states] = [new Float32Array(count), new Float32Array(count), new Uint8Array(count)];
  return { lightness, a, b, states };
}
const found = (left: Parameters<typeof seenBy>[0]): Uint8Array | null =>
  castShadow(seenBy(left), expected, slotMap, size);

test.each([
  ['a hard rim', 2],
  ['a soft rim', 40],
])('a shadow with %s over several shapes is found, and nothing far from it', (_, rim) => {
  const mask = found((x, y) => {
    const past = Math.min(1, Math.max(0, (y + x / 4 - 170) / rim + 0.5));
    return 1 - 0.5 * past;
  });
  const at = (x: number, y: number): number | undefined => mask?.[y * size.width + x];
  expect([at(20, 230), at(150, 220), at(240, 200), at(350, 239)]).toEqual([1, 1, 1, 1]);
  expect([at(20, 60), at(150, 80), at(240, 60), at(350, 20)]).toEqual([0, 0, 0, 0]);
});

test('paint laid too dark is none: over a slot, over two that meet, or over part of one', () => {
  expect(found((_x, _y, slot) => (slot === 1 ? 0.6 : 1))).toBeNull();
  expect(found((_x, _y, slot) => (slot === 1 || slot === 2 ? 0.6 : 1))).toBeNull();
  expect(found((_x, y, slot) => (slot === 2 && y > 120 ? 0.6 : 1))).toBeNull();
});

test('a sheet as planned has none', () => {
  expect(found(() => 1)).toBeNull();
});
