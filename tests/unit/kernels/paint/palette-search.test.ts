import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../app/model/lab.ts';
import type { Paint } from '../../../../app/model/paint.ts';
import { isWhiteOrBlack } from '../../../../app/model/paint.ts';
import { colourOfWashes } from '../../../../workers/kernels/optics/colour-of-washes.ts';
import { paintBox } from '../../../../workers/kernels/optics/paint-box.ts';
import { noCheckpoint } from '../../../../workers/kernels/palette/checkpoint.ts';
import { combinations } from '../../../../workers/kernels/palette/combinations.ts';
import { darkestOf } from '../../../../workers/kernels/palette/darkest-of.ts';
import { halfOctaveLoads } from '../../../../workers/kernels/palette/half-octave-loads.ts';
import {
  darkestBandLightness,
  paletteTargets,
} from '../../../../workers/kernels/palette/palette-target.ts';
import { searchPalette } from '../../../../workers/kernels/palette/search-palette.ts';
import { wholeParts } from '../../../../workers/kernels/palette/whole-parts.ts';
import { madeReading, tableOf } from './made-reading.ts';

const landscape = madeReading(
  tableOf(
    [95, 72, 50, 26],
    [
      [-12, 24],
      [2, -22],
      [8, 20],
    ],
  ),
);

const oracle = differenceCiede2000();
const lab65 = ([l, a, b]: Lab) => ({ mode: 'lab65', l, a, b }) as const;

/** The slow obvious way: every set, every mix, culori for the differences. */
function bruteForce(paints: readonly Paint[], size: number) {
  const targets = paletteTargets(landscape.slots);
  const mixCosts = new Map<string, number[]>();
  for (const count of [1, 2]) {
    for (const members of combinations(paints.length, count)) {
      const own = members.map((member) => paints[member] as Paint);
      const colours = wholeParts(count).flatMap((parts) =>
        halfOctaveLoads.map((load) => colourOfWashes([{ paints: own, parts, load }])),
      );
      mixCosts.set(
        members.join(),
        targets.map(
          ({ lab }) =>
            Math.min(...colours.map((colour) => oracle(lab65(lab), lab65(colour)))) +
            0.4 * (count - 1),
        ),
      );
    }
  }
  let best = { cost: Number.POSITIVE_INFINITY, set: [] as number[] };
  for (let count = 1; count <= size; count++) {
    for (const set of combinations(paints.length, count)) {
      const own = set.map((member) => paints[member] as Paint);
      if (darkestOf(own) > darkestBandLightness(targets) + 0.5) continue;
      const cost = targets.reduce((all, target, i) => {
        const groups = [
          ...set.map((one) => [one]),
          ...combinations(set.length, 2).map((pair) => pair.map((at) => set[at] as number)),
        ];
        const least = Math.min(...groups.map((group) => mixCosts.get(group.join())?.[i] ?? 1e9));
        return all + target.weight * least;
      }, 0.3 * count);
      if (cost < best.cost) best = { cost, set };
    }
  }
  return best;
}

const idsOf = (paints: readonly Paint[]): string[] => paints.map((paint) => paint.id);

describe('palette search', () => {
  it('finds what going through everything the slow way finds', async () => {
    const box = [3, 6, 10, 13, 19, 21, 24, 28].map((n) => paintBox[n] as Paint);
    for (const size of [1, 2, 3]) {
      const wanted = bruteForce(box, size);
      const wishes = { box: idsOf(box), paletteSize: size };
      const found = await searchPalette(landscape.slots, paintBox, wishes, noCheckpoint);
      if (wanted.set.length === 0) {
        expect(found.shortfall).toBeGreaterThan(0.5);
        continue;
      }
      expect(found.cost).toBeCloseTo(wanted.cost, 3);
      expect(idsOf(found.paints)).toEqual(wanted.set.map((at) => box[at]?.id));
    }
  }, 60_000);

  it('keeps to her wishes', async () => {
    const search = (wishes: Parameters<typeof searchPalette>[2]) =>
      searchPalette(landscape.slots, paintBox, wishes, noCheckpoint);
    const free = await search({});
    expect(free.paints.length).toBeLessThanOrEqual(5);
    expect(free.paints.some((paint) => isWhiteOrBlack(paint.ci))).toBe(false);
    expect(free.shortfall).toBe(0);

    const first = free.paints[0]?.id ?? '';
    expect(idsOf((await search({ exclude: [first] })).paints)).not.toContain(first);
    const must = await search({
      must: ['pbk9-bone-black', 'pr122-quinacridone-magenta'],
      paletteSize: 3,
    });
    expect(idsOf(must.paints)).toContain('pbk9-bone-black');
    expect(idsOf(must.paints)).toContain('pr122-quinacridone-magenta');
    const chosen = await search({ chosen: ['py74-arylide-yellow', 'pb29-ultramarine-blue'] });
    expect(idsOf(chosen.paints).sort()).toEqual(['pb29-ultramarine-blue', 'py74-arylide-yellow']);
    const larger = await search({ paletteSize: 6 });
    expect(larger.cost).toBeLessThanOrEqual(free.cost + 1e-9);
  }, 60_000);

  it('says by how much one yellow misses the darks', async () => {
    const wishes = { chosen: ['py74-arylide-yellow'] };
    const found = await searchPalette(landscape.slots, paintBox, wishes, noCheckpoint);
    expect(found.shortfall).toBeGreaterThan(40);
  });

  it('answers contradicting wishes with a sentence for her', async () => {
    const search = (wishes: Parameters<typeof searchPalette>[2]) =>
      searchPalette(landscape.slots, paintBox, wishes, noCheckpoint);
    const blue = 'pb29-ultramarine-blue';
    await expect(search({ must: [blue], exclude: [blue] })).rejects.toThrow(/decide for one/);
    await expect(search({ must: ['gone'] })).rejects.toThrow(/Choose from the paint box/);
    await expect(search({ paletteSize: 0 })).rejects.toThrow(/1 to 7/);
    await expect(search({ box: [] })).rejects.toThrow(/put more paints in the box/);
    await expect(search({ must: [blue, 'py74-arylide-yellow'], paletteSize: 1 })).rejects.toThrow(
      /allow more or want fewer/,
    );
  });
});
