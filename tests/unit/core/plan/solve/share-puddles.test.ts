import { describe, expect, test } from 'vitest';
import type {
  ActiveFamily,
  FamilyWash,
} from '../../../../../app/core/plan/solve/fit-family-wash.ts';
import type { PuddleOption } from '../../../../../app/core/plan/solve/puddle-options.ts';
import {
  itemsOf,
  leftOut,
  partitions,
  sharePuddles,
} from '../../../../../app/core/plan/solve/share-puddles.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

describe('ways to group', () => {
  // Stirling numbers of the second kind: into 1, 2, 3 groups that are not empty.
  test.each([
    [1, 3, 1],
    [3, 3, 1 + 3 + 1],
    [4, 2, 1 + 7],
    [5, 3, 1 + 15 + 25],
    [6, 3, 1 + 31 + 90],
  ])('%i items in at most %i groups: %i', (count, most, ways) => {
    const found = partitions(count, most);
    expect(found).toHaveLength(ways);
    expect(new Set(found.map((groups) => groups.join())).size).toBe(ways);
    for (const groups of found) {
      const items = groups.flatMap(itemsOf);
      expect(items.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
      expect(groups.length).toBeLessThanOrEqual(most);
    }
  });

  test('the items of a group given as bits, up to the last bit', () => {
    expect(itemsOf(0)).toEqual([]);
    expect(itemsOf(0b10110)).toEqual([1, 2, 4]);
    expect(itemsOf(1 | (1 << 31))).toEqual([0, 31]);
  });
});

/** By family and option: what is estimated, and what it costs when fitted; null cannot be fitted. */
interface Costs {
  readonly estimated: readonly (readonly number[])[];
  readonly exact?: readonly (readonly (number | null)[])[];
}

/** A wash whose costs are written down: which option each family gets, by its number, and what was fitted. */
function shared({ estimated, exact = estimated }: Costs, puddles: number, precision = 'exact') {
  const families = estimated.map((_, family) => ({ family }) as unknown as ActiveFamily);
  const numberOf = (family: ActiveFamily) => families.indexOf(family);
  const options = (estimated[0] ?? []).map((_, n) => ({ n }) as unknown as PuddleOption);
  const fitted: string[] = [];
  const fitter = {
    options,
    estimateCosts: (family: ActiveFamily) => Float64Array.from(estimated[numberOf(family)] ?? []),
    fit: (option: PuddleOption, family: ActiveFamily) => {
      const [n, i] = [options.indexOf(option), numberOf(family)];
      fitted.push(`${i}: ${n}`);
      const cost = exact[i]?.[n] ?? null;
      return cost === null ? null : { cost, familyWash: { option, load: n } as FamilyWash };
    },
  };
  const found = sharePuddles(families, fitter, 1, puddles, precision as 'exact' | 'estimate');
  return {
    cost: found.cost,
    options: found.familyWashes.map((wash) => wash && options.indexOf(wash.option)),
    fitted,
  };
}

describe('puddles of one wash', () => {
  test('two families with two puddles have each its own, with one the least of both together', () => {
    const estimated = [
      [1, 9, 4],
      [9, 1, 4],
    ];
    expect(shared({ estimated }, 2)).toMatchObject({ cost: 2, options: [0, 1] });
    expect(shared({ estimated }, 3)).toMatchObject({ cost: 2, options: [0, 1] });
    expect(shared({ estimated }, 1)).toMatchObject({ cost: 8, options: [2, 2] });
  });

  test('of three families those share that lose least by it', () => {
    const estimated = [
      [1, 9, 9, 2],
      [9, 1, 9, 9],
      [9, 9, 1, 3],
    ];
    expect(shared({ estimated }, 2)).toMatchObject({ cost: 6, options: [3, 1, 3] });
  });

  test('a family that every mix would lighten is left out, at the price of that', () => {
    const none = Number.POSITIVE_INFINITY;
    const estimated = [
      [none, none],
      [3, 2],
    ];
    expect(shared({ estimated }, 2)).toMatchObject({ cost: leftOut + 2, options: [null, 1] });
    expect(shared({ estimated }, 1)).toMatchObject({ cost: 2 * leftOut, options: [null, null] });
  });

  test('what has nothing to paint costs nothing and gets no mix', () => {
    const estimated = [
      [0, 0],
      [3, 2],
    ];
    const exact = [
      [null, null],
      [3, 2],
    ];
    expect(shared({ estimated, exact }, 1)).toMatchObject({ cost: 2, options: [null, 1] });
  });

  test('ten mixes of least estimate are fitted, the best of them counts, of like ones the first', () => {
    const estimated = [[12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]];
    const exactBut = (n: number, cost: number) => [estimated[0]?.map(() => 50).with(n, cost) ?? []];
    const tenth = shared({ estimated, exact: exactBut(2, 1) }, 1);
    expect(tenth).toMatchObject({ cost: 1, options: [2] });
    expect(tenth.fitted).toEqual([11, 10, 9, 8, 7, 6, 5, 4, 3, 2].map((n) => `0: ${n}`));
    // The eleventh is not looked at, even where it would be better.
    expect(shared({ estimated, exact: exactBut(1, 1) }, 1)).toMatchObject({ options: [11] });
    const alike = [new Array<number>(12).fill(3)];
    const first = shared({ estimated: alike }, 1);
    expect(first).toMatchObject({ cost: 3, options: [0] });
    expect(first.fitted).toEqual(Array.from({ length: 10 }, (_, n) => `0: ${n}`));
    // In an estimate the best alone.
    expect(shared({ estimated }, 1, 'estimate').fitted).toEqual(['0: 11']);
  });

  test('the four splits of least estimate are fitted, and the best of them counts', () => {
    // Six options, each the best of one pair of four families; the pair's estimate is its own.
    const pairs = [
      [0, 1],
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
      [2, 3],
    ] as const;
    const estimated = [0, 1, 2, 3].map((i) =>
      pairs.map((pair, n) => ((pair as readonly number[]).includes(i) ? 1 + n / 10 : 100)),
    );
    const own = [0, 1, 2, 3].map((i) => [
      ...(estimated[i] ?? []),
      ...[0, 1, 2, 3].map((k) => (k === i ? 0.5 : 100)),
    ]);
    const all = shared({ estimated: own }, 3);
    // One pair shares, the other two have their own: the six splits cost 1 + 2 x (1 + n / 10).
    expect(all).toMatchObject({ cost: 3, options: [0, 0, 6 + 2, 6 + 3] });
    // The fourth split wins where it fits best, the fifth is not looked at.
    const better = (n: number) => own.map((row) => row.with(n, (row[n] ?? 0) - 0.6));
    expect(shared({ estimated: own, exact: better(3) }, 3).options).toEqual([6, 3, 3, 6 + 3]);
    expect(shared({ estimated: own, exact: better(4) }, 3).options).toEqual([0, 0, 6 + 2, 6 + 3]);
  });

  test('seeded costs: an estimate is the least over all splits and options', () => {
    const random = seeded(5);
    for (let round = 0; round < 40; round++) {
      const count = 1 + Math.floor(5 * random());
      const puddles = 1 + Math.floor(3 * random());
      const estimated = Array.from({ length: count }, () =>
        Array.from({ length: 7 }, () =>
          random() < 0.2 ? Number.POSITIVE_INFINITY : Math.round(99 * random()),
        ),
      );
      const groupCost = (bits: number) =>
        Math.min(
          leftOut * itemsOf(bits).length,
          ...Array.from({ length: 7 }, (_, n) =>
            itemsOf(bits).reduce((sum, i) => sum + (estimated[i]?.[n] ?? 0), 0),
          ),
        );
      const wanted = Math.min(count, puddles);
      const least = Math.min(
        ...partitions(count, wanted)
          .filter(({ length }) => length === wanted)
          .map((split) => split.reduce((sum, bits) => sum + groupCost(bits), 0)),
      );
      const found = shared({ estimated }, puddles, 'estimate');
      expect(found.cost).toBe(least);
      const told = found.options.map((n, i) => (n === null ? leftOut : (estimated[i]?.[n] ?? 0)));
      expect(told.reduce((sum, each) => sum + each, 0)).toBe(least);
    }
  });
});
