import { expect, it } from 'vitest';
import { searchShares } from '../../../../../app/core/limits.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../../app/core/paint/mix.ts';
import { coatOf } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  GroupMixer,
  LibraryMemo,
  labSteps,
} from '../../../../../app/core/palette/library/mix-library.ts';

it('lists each way to mix once, that can be squeezed out: 1, 19 and 52', () => {
  // The slow way: every count of every paint; in lowest terms where no smaller mix has the same shares.
  const slow = (count: number): string[] => {
    const counts = Array.from({ length: 8 ** count }, (_, n) =>
      Array.from({ length: count }, (_, i) => (Math.floor(n / 8 ** i) % 8) + 1),
    );
    const fits = counts.filter(
      (parts) =>
        parts.reduce((sum, part) => sum + part) <= 8 &&
        Math.max(...parts) <= 6 * Math.min(...parts),
    );
    return fits
      .filter((parts) => [2, 3, 4, 5, 6, 7, 8].every((d) => parts.some((part) => part % d !== 0)))
      .map((parts) => parts.join())
      .sort();
  };
  expect([1, 2, 3].map((count) => slow(count).length)).toEqual([1, 19, 52]);
  for (const count of [1, 2, 3]) {
    expect(
      wholeParts(count)
        .map((parts) => parts.join())
        .sort(),
    ).toEqual(slow(count));
  }
});

it('searches shares of a full coat in half octaves, 1/128 to 1', () => {
  expect(searchShares).toHaveLength(15);
  expect(searchShares[0]).toBe(1 / 128);
  expect(searchShares[14]).toBe(1);
  for (const [n, share] of searchShares.entries()) {
    if (n > 0) expect(share / (searchShares[n - 1] as number)).toBeCloseTo(Math.SQRT2, 12);
  }
});

it('doubling layers gives what each layer by itself gives', () => {
  const members = [5, 20, 28];
  const paints = members.map((member) => paintBox[member]).filter((paint) => paint !== undefined);
  const group = new GroupMixer(paintBox).mix(members);
  for (const [way, parts] of wholeParts(3).entries()) {
    // A full coat of the mix: that of each paint, by its parts of the volume.
    const sum = parts.reduce((all, part) => all + part);
    const coat = paints.reduce((all, paint, i) => all + (coatOf(paint) * (parts[i] ?? 0)) / sum, 0);
    for (const [n, share] of searchShares.entries()) {
      const load = share * coat;
      const wanted = colourOfWashes([{ paints, parts, load }]);
      const at = way * searchShares.length + n;
      const steps = [group.lightness[at], group.chroma[2 * at], group.chroma[2 * at + 1]];
      for (const i of [0, 1, 2] as const) {
        const off = (steps[i] as number) / labSteps - wanted[i];
        expect(Math.abs(off)).toBeLessThan(0.5 / labSteps + 1e-4); // kept in whole steps
      }
    }
  }
});

it('lets a cancel in between', async () => {
  let calls = 0;
  const stop = async (): Promise<void> => {
    calls++;
    if (calls === 3) throw new Error('cancelled');
  };
  await expect(buildMixLibrary(paintBox, stop)).rejects.toThrow('cancelled');
  const library = await buildMixLibrary(paintBox.slice(0, 4), noCheckpoint);
  expect(library.groups).toHaveLength(4 + 6 + 4);
});

it('keeps the mixes of a box, also while few paints are asked for between', async () => {
  const memo = new LibraryMemo();
  let pauses = 0;
  const counted = async (): Promise<void> => {
    pauses++;
  };
  const box = paintBox.slice(0, 8);
  const library = await memo.libraryOf(box, counted);
  expect(library).toEqual(await buildMixLibrary(box, noCheckpoint));
  expect((await memo.libraryOf(paintBox.slice(2, 5), noCheckpoint)).groups).toHaveLength(7);
  pauses = 0;
  expect(await memo.libraryOf([...box], counted)).toBe(library);
  expect(pauses).toBe(0);
  await new LibraryMemo().libraryOf(box, counted);
  expect(pauses).toBeGreaterThan(0);
});

it('takes over mixes of paints that two boxes have in common', async () => {
  const memo = new LibraryMemo();
  const before = await memo.libraryOf(paintBox.slice(0, 8), noCheckpoint);
  const other = paintBox.slice(1, 9);
  const after = await memo.libraryOf(other, noCheckpoint);
  expect(after).toEqual(await buildMixLibrary(other, noCheckpoint));
  const single = (library: typeof after, paint: number) =>
    library.groups.find(({ members }) => members.join() === String(paint))?.lightness;
  expect(single(after, 0)).toBe(single(before, 1));
});
