import { expect, it } from 'vitest';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  LibraryMemo,
} from '../../../../../app/core/palette/library/mix-library.ts';

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
