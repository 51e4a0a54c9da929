import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { searchLoads } from '../../../../../app/core/limits.ts';
import { combinations } from '../../../../../app/core/numeric/combinations.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../../app/core/paint/mix.ts';
import { isWhiteOrBlack, type Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { LibraryMemo } from '../../../../../app/core/palette/library/mix-library.ts';
import {
  darkestBandLightness,
  paletteTargets,
} from '../../../../../app/core/palette/search/cost-tables.ts';
import { nearTie, searchPalette } from '../../../../../app/core/palette/search/search-palette.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const library = new LibraryMemo();

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
type Lab65 = ReturnType<typeof lab65>;

/** Seeded, so that a failure can be seen again. */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** CIEDE2000 is never under |dL*| / S_L, and S_L never over 1.75 (ISO/CIE 11664-6): most colours are soon told. */
function leastOf(target: Lab65, colours: readonly Lab65[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const colour of colours) {
    if (Math.abs(colour.l - target.l) > 1.75 * least) continue;
    least = Math.min(least, oracle(target, colour));
  }
  return least;
}

interface Oracle {
  readonly cost: number;
  readonly set: readonly number[];
}

/** The slow obvious way: every set up to `most` with `must` in it, every mix, culori for the differences. */
function bruteForce(
  paints: readonly Paint[],
  slots: readonly Slot[],
  most: number,
  must: readonly number[] = [],
): Oracle[] {
  const targets = paletteTargets(slots);
  const groups = [1, 2, 3].flatMap((count) => combinations(paints.length, count));
  const mixed = new Map(
    groups.map((members) => {
      const own = members.map((member) => paints[member] as Paint);
      const colours = wholeParts(members.length).flatMap((parts) =>
        searchLoads.map((load) => colourOfWashes([{ paints: own, parts, load }])),
      );
      const known = colours.map(lab65);
      const costs = targets.map(
        ({ lab }) => leastOf(lab65(lab), known) + 0.4 * (members.length - 1),
      );
      return [members.join(), { costs, darkest: Math.min(...colours.map(([l]) => l)) }];
    }),
  );
  return Array.from({ length: most }, (_, n) => {
    let best = { cost: Number.POSITIVE_INFINITY, set: [] as number[] };
    for (let count = 1; count <= n + 1; count++) {
      for (const set of combinations(paints.length, count)) {
        if (!must.every((member) => set.includes(member))) continue;
        const own = [1, 2, 3]
          .flatMap((size) => (size > count ? [] : combinations(count, size)))
          .flatMap((places) => mixed.get(places.map((at) => set[at]).join()) ?? []);
        const darkest = Math.min(...own.map((group) => group.darkest));
        if (darkest > darkestBandLightness(targets) + 0.5) continue;
        const cost = targets.reduce(
          (all, target, i) =>
            all + target.weight * Math.min(...own.map(({ costs }) => costs[i] as number)),
          0.3 * count,
        );
        if (cost < best.cost) best = { cost, set };
      }
    }
    return best;
  });
}

const idsOf = (paints: readonly Paint[]): string[] => paints.map((paint) => paint.id);

const asked = [
  'pbk9-bone-black',
  'pr122-quinacridone-magenta',
  'py74-arylide-yellow',
  'pb29-ultramarine-blue',
];

describe('palette search', () => {
  // As brute force: 0.05 in cost, for mixes are kept in steps of 1/256 L*.
  it.each([
    { seed: 1, size: 10, most: 4, asked: 0, out: 0 },
    { seed: 2, size: 8, most: 4, asked: 0, out: 0 },
    { seed: 3, size: 8, most: 3, asked: 1, out: 2 },
    { seed: 4, size: 8, most: 3, asked: 2, out: 1 },
    { seed: 5, size: 7, most: 4, asked: 1, out: 0 },
    { seed: 6, size: 6, most: 4, asked: 0, out: 1 },
    { seed: 7, size: 5, most: 4, asked: 0, out: 0 },
  ])(
    'finds what going through everything the slow way finds, case $seed',
    async ({ seed, size, most, asked, out }) => {
      const random = randoms(seed);
      const places = new Set<number>();
      while (places.size < size) places.add(Math.floor(random() * paintBox.length));
      const box = [...places]
        .sort((x, y) => x - y)
        .map((n) => paintBox[n] as Paint)
        .filter((paint) => !isWhiteOrBlack(paint.ci));
      const hue = (): [number, number] => [random() * 60 - 30, random() * 60 - 30];
      const table = tableOf([95, 60 + 20 * random(), 50, 30 + 10 * random()], [hue(), hue()]);
      const { slots } = madeReading(table);
      const exclude = box.slice(0, out);
      const left = box.slice(out);
      const must = left.slice(-asked || left.length);
      const wanted = bruteForce(
        left,
        slots,
        most,
        must.map((paint) => left.indexOf(paint)),
      );
      for (const [n, { cost, set }] of wanted.entries()) {
        if (n + 1 < asked) continue;
        const wishes = {
          box: idsOf(box),
          paletteSize: n + 1,
          must: idsOf(must),
          exclude: idsOf(exclude),
        };
        const found = await searchPalette(slots, paintBox, wishes, noCheckpoint, library);
        if (set.length === 0) {
          expect(found.shortfall).toBeGreaterThan(0);
          continue;
        }
        expect(Math.abs(found.leastCost - cost)).toBeLessThan(0.05);
        expect(found.cost).toBeLessThanOrEqual(found.leastCost + nearTie);
        expect(idsOf(found.paints)).toEqual(expect.arrayContaining(idsOf(must)));
        for (const paint of exclude) expect(idsOf(found.paints)).not.toContain(paint.id);
      }
    },
  );

  it('of near ties takes the paints with less against them', async () => {
    // Two paints of the same optics: one opaque and to be handled with care.
    const plain = paintBox.find(({ id }) => id === 'pb29-ultramarine-blue') as Paint;
    const heavy: Paint = {
      ...plain,
      id: 'aa-heavy-blue',
      properties: { ...plain.properties, transparency: 'O', caution: 'Read the label.' },
    };
    const others = ['py74-arylide-yellow', 'pr122-quinacridone-magenta'].map(
      (id) => paintBox.find((paint) => paint.id === id) as Paint,
    );
    const box = [heavy, ...others, plain];
    const wishes = { box: idsOf(box), paletteSize: 3 };
    const found = await searchPalette(landscape.slots, box, wishes, noCheckpoint, library);
    expect(idsOf(found.paints)).toContain(plain.id);
    expect(idsOf(found.paints)).not.toContain(heavy.id);
  });

  it('keeps to her wishes', async () => {
    const some = paintBox.filter((paint, n) => n % 3 === 0 || asked.includes(paint.id));
    const search = (wishes: Parameters<typeof searchPalette>[2]) =>
      searchPalette(landscape.slots, some, wishes, noCheckpoint, library);
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
  });

  it('says by how much one yellow misses the darks', async () => {
    const wishes = { chosen: ['py74-arylide-yellow'] };
    const found = await searchPalette(landscape.slots, paintBox, wishes, noCheckpoint, library);
    expect(found.shortfall).toBeGreaterThan(40);
  });

  it('answers contradicting wishes with a sentence for her', async () => {
    const search = (wishes: Parameters<typeof searchPalette>[2]) =>
      searchPalette(landscape.slots, paintBox, wishes, noCheckpoint, library);
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
