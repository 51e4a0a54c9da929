import { expect, it } from 'vitest';
import { combinations } from '../../../../../app/core/numeric/combinations.ts';
import { isWhiteOrBlack } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildMixLibrary } from '../../../../../app/core/palette/library/mix-library.ts';
import {
  branchAndBound,
  setsUpTo,
} from '../../../../../app/core/palette/search/branch-and-bound.ts';
import { CostTables } from '../../../../../app/core/palette/search/cost-tables.ts';
import { priceOf } from '../../../../../app/core/palette/search/paint-price.ts';
import { paletteTargets } from '../../../../../app/core/palette/search/palette-targets.ts';
import { scoreSet } from '../../../../../app/core/palette/search/score-set.ts';
import {
  closeEnough,
  type FoundSet,
  type SetWishes,
} from '../../../../../app/core/palette/search/set-walk.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { seeded } from '../../../../support/seeded.ts';

/** Tables of a few paints drawn by chance, for a made-up picture. */
async function tablesOf(seed: number, count: number) {
  const random = seeded(seed);
  const free = paintBox.filter(({ ci }) => !isWhiteOrBlack(ci));
  const paints = free
    .map((paint) => ({ paint, at: random() }))
    .sort((one, two) => one.at - two.at)
    .slice(0, count)
    .map(({ paint }) => paint);
  const hue = (): [number, number] => [random() * 60 - 30, random() * 60 - 30];
  const table = tableOf([95, 60 + 20 * random(), 50, 30 + 10 * random()], [hue(), hue(), hue()]);
  const targets = paletteTargets(madeReading(table).slots);
  const library = await buildMixLibrary(paints, noCheckpoint);
  const prices = paints.map((paint) => priceOf(paint, false));
  return { targets, tables: await CostTables.of(library, targets, prices, noCheckpoint) };
}

/** Every set there is, one after the other, the cheaper first. */
function allSets(
  { tables, targets }: Awaited<ReturnType<typeof tablesOf>>,
  { must, size, darkest }: SetWishes,
): FoundSet[] {
  const sets = Array.from({ length: size }, (_, n) => combinations(tables.paintCount, n + 1))
    .flat()
    .filter((members) => must.every((paint) => members.includes(paint)))
    .map((members) => {
      const { cost, darkest } = scoreSet(tables, targets, members);
      return { members, cost, darkest };
    });
  const reached = Math.max(darkest, Math.min(...sets.map((set) => set.darkest)));
  return sets
    .filter((set) => set.darkest <= reached + closeEnough)
    .sort((one, two) => one.cost - two.cost);
}

// Seeds and limits are (own); what is expected is by going through everything.
it.each([
  { seed: 1, count: 9, size: 5, must: [], darkest: 30 },
  { seed: 2, count: 9, size: 4, must: [3], darkest: 100 },
  { seed: 3, count: 8, size: 5, must: [6, 1], darkest: 24 },
  { seed: 4, count: 8, size: 3, must: [2, 5], darkest: 100 },
  { seed: 5, count: 8, size: 2, must: [2, 5], darkest: 100 },
  { seed: 6, count: 8, size: 2, must: [], darkest: 100 },
  { seed: 7, count: 8, size: 1, must: [], darkest: 10 },
  { seed: 8, count: 7, size: 7, must: [], darkest: 30 },
  { seed: 9, count: 10, size: 6, must: [0], darkest: 35 },
])(
  'of all sets none that is as good is passed over, seed $seed',
  async ({ seed, count, ...wishes }) => {
    const made = await tablesOf(seed, count);
    const { tables, targets } = made;
    const all = allSets(made, wishes);
    const [best] = all;
    if (!best) throw new Error('no set');
    const within = 2;
    const good = all.filter(({ cost }) => cost <= best.cost + within);
    const found = await branchAndBound(within, 12, tables, targets, wishes, noCheckpoint);
    expect(found.map(({ cost }) => cost)).toEqual(
      good.slice(0, 12).map(({ cost }) => expect.closeTo(cost, 9)),
    );
    expect(found[0]?.members).toEqual(best.members);
    expect(found[0]?.darkest).toBe(best.darkest);
    const visited: FoundSet[] = [];
    const atMost = best.cost + within;
    await setsUpTo(atMost, tables, targets, wishes, (set) => visited.push(set), noCheckpoint);
    expect(visited.map(({ members }) => members.join()).sort()).toEqual(
      good.map(({ members }) => members.join()).sort(),
    );
  },
);
