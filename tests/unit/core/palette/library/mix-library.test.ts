import { expect, it } from 'vitest';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../../app/core/paint/mix.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  halfOctaveLoads,
  labSteps,
  mixGroup,
} from '../../../../../app/core/palette/library/mix-library.ts';

it('lists each way to mix once: 1, 21 and 52', () => {
  expect([1, 2, 3].map((count) => wholeParts(count).length)).toEqual([1, 21, 52]);
  for (const parts of wholeParts(3)) {
    expect(parts.reduce((all, part) => all + part, 0)).toBeLessThanOrEqual(8);
    expect(parts.some((part) => part % 2 === 1)).toBe(true);
  }
});

it('searches loads of half octaves from 0.25 to 32', () => {
  expect(halfOctaveLoads).toHaveLength(15);
  expect(halfOctaveLoads[0]).toBe(0.25);
  expect(halfOctaveLoads[14]).toBeCloseTo(32, 12);
});

it('doubling layers gives what each layer by itself gives', () => {
  const members = [5, 20, 28];
  const paints = members.map((member) => paintBox[member]).filter((paint) => paint !== undefined);
  const group = mixGroup(paintBox, members);
  for (const [way, parts] of wholeParts(3).entries()) {
    for (const [n, load] of halfOctaveLoads.entries()) {
      const wanted = colourOfWashes([{ paints, parts, load }]);
      const at = way * halfOctaveLoads.length + n;
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
