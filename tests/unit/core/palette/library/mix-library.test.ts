import { expect, it } from 'vitest';
import { searchLoads } from '../../../../../app/core/limits.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../../app/core/paint/mix.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  GroupMixer,
  LibraryMemo,
  labSteps,
} from '../../../../../app/core/palette/library/mix-library.ts';

it('lists each way to mix once: 1, 21 and 52', () => {
  expect([1, 2, 3].map((count) => wholeParts(count).length)).toEqual([1, 21, 52]);
  for (const parts of wholeParts(3)) {
    expect(parts.reduce((all, part) => all + part, 0)).toBeLessThanOrEqual(8);
    expect(parts.some((part) => part % 2 === 1)).toBe(true);
  }
});

it('searches loads of half octaves from 0.25 to 32', () => {
  expect(searchLoads).toHaveLength(15);
  expect(searchLoads[0]).toBe(0.25);
  expect(searchLoads[14]).toBeCloseTo(32, 12);
});

it('doubling layers gives what each layer by itself gives', () => {
  const members = [5, 20, 28];
  const paints = members.map((member) => paintBox[member]).filter((paint) => paint !== undefined);
  const group = new GroupMixer(paintBox).mix(members);
  for (const [way, parts] of wholeParts(3).entries()) {
    for (const [n, load] of searchLoads.entries()) {
      const wanted = colourOfWashes([{ paints, parts, load }]);
      const at = way * searchLoads.length + n;
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
