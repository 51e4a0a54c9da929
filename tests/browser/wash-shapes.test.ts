import { afterAll, expect, test } from 'vitest';
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import { massSizes } from '../../app/core/reading/masses.ts';
import type { Slot } from '../../app/core/reading/slot.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());
const signal = new AbortController().signal;

const slot = (band: number, lightness: number, reserve: boolean): Slot => ({
  passage: 'sheet',
  band,
  family: 1,
  share: 0.5,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
  reserve,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 1,
});

/** 60 x 40 px at 1 px a mm: white paper with shapes of 12 and of 6 mm. */
const size = { width: 60, height: 40 };
const slotMap = new Uint8Array(60 * 40);
for (const [left, top, side] of [
  [5, 5, 12],
  [40, 20, 6],
] as const)
  for (let y = top; y < top + side; y++) slotMap.fill(1, y * 60 + left, y * 60 + left + side);
const request = {
  slotMap,
  slots: [slot(1, 95, true), slot(2, 50, false)],
  size,
  pxPerMm: 1,
  wash: 'firstWash' as const,
  sizes: massSizes,
};

test('the worker finds the shapes of a wash at her smallest size, and leaves the map with the page', async () => {
  const usual = await client.washShapes(signal, request);
  expect(usual.count).toBe(1);
  expect(usual.isPainted[usual.map[10 * 60 + 10] as number]).toBe(true);
  expect(usual.isPainted[usual.map[22 * 60 + 42] as number]).toBe(false);
  expect(slotMap.length).toBe(60 * 40);
  const fine = await client.washShapes(signal, {
    ...request,
    sizes: { ...massSizes, firstWash: 6 },
  });
  expect(fine.count).toBe(2);
  const leaving = new AbortController();
  const given = client.washShapes(leaving.signal, request);
  leaving.abort();
  await expect(given).rejects.toThrow();
});
