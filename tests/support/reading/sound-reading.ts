import { expect } from 'vitest';
import type { readPicture } from '../../../app/core/reading/read-picture.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

function everyNumber(value: unknown, seen: number[] = []): number[] {
  if (typeof value === 'number') seen.push(value);
  else if (value && typeof value === 'object') {
    for (const part of Object.values(value)) everyNumber(part, seen);
  }
  return seen;
}

/** What holds for every reading, whatever the picture. */
export function sound({
  reading,
  slotMap,
  bandMap,
}: Awaited<ReturnType<typeof readPicture>>): void {
  const { width, height } = reading.raster;
  expect(everyNumber(reading).every(Number.isFinite)).toBe(true);
  for (const list of [reading.bands, reading.families, reading.slots]) {
    expect(sum(list.map(({ share }) => share))).toBeCloseTo(1, 9);
    for (const { share } of list) expect(share).toBeGreaterThan(0);
  }
  expect(reading.bands.map(({ band }) => band)).toEqual(reading.bands.map((_, i) => i + 1));
  expect(reading.families.map(({ id }) => id)).toEqual(reading.families.map((_, i) => i + 1));
  expect([reading.bands[0]?.to, reading.bands.at(-1)?.from]).toEqual([100, 0]);
  for (const [i, band] of reading.bands.entries()) {
    expect(band.lightness).toBeGreaterThanOrEqual(band.from - 0.2);
    expect(band.lightness).toBeLessThanOrEqual(band.to + 0.2);
    if (i > 0) expect(band.to).toBe(reading.bands[i - 1]?.from);
  }
  const counts = new Array<number>(reading.slots.length).fill(0);
  expect([slotMap.length, bandMap.length]).toEqual([width * height, width * height]);
  for (let i = 0; i < slotMap.length; i++) {
    const slot = slotMap[i] as number;
    counts[slot] = (counts[slot] as number) + 1;
    if (reading.slots[slot]?.band !== bandMap[i]) expect.fail(`pixel ${i}: slot and band differ`);
  }
  for (const [i, slot] of reading.slots.entries()) {
    expect((counts[i] as number) / slotMap.length).toBeCloseTo(slot.share, 9);
  }
  expect(sum(reading.lightness.histogram)).toBe(width * height);
}

export const codes = (reading: Reading): string[] => reading.warnings.map(({ code }) => code);
