import { describe, expect, test } from 'vitest';
import type { PlanWishes } from '../../../../../app/core/decisions/plan-wishes.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { scoreSet } from '../../../../../app/core/palette/search/score-set.ts';
import {
  nearTie,
  type PaletteSearch,
  paintsOf,
} from '../../../../../app/core/palette/search/search-palette.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { proposeWashes } from '../../../../../app/core/plan/evening/propose-washes.ts';
import { choosePalette } from '../../../../../app/core/plan/solve/choose-palette.ts';
import { ratePalette } from '../../../../../app/core/plan/solve/rate-palette.ts';
import { washSolver } from '../../../../../app/core/plan/solve/solve-palette.ts';
import { plannedSlots } from '../../../../../app/core/plan/targets/planned-slots.ts';
import { readings } from '../../../../support/plan/built-plans.ts';
import { warmMemory } from '../../../../support/plan/warm-memory.ts';

const reading = readings['mountain snow'];
const memory = warmMemory();

async function chosenFor(wishes: PlanWishes, seen = reading) {
  const planned = await plannedSlots(seen, wishes, noCheckpoint, memory.darkest);
  const { paints, ...found } = await choosePalette(seen, planned, noCheckpoint, memory);
  return { ...found, ids: paints.map(({ id }) => id), planned };
}

const scoreOf = ({ tables, targets, paints }: PaletteSearch, ids: readonly string[]): number =>
  scoreSet(
    tables,
    targets,
    ids.map((id) => paints.findIndex((paint) => paint.id === id)).sort((one, two) => one - two),
  ).cost;

describe('the palette a painting has', () => {
  test('stays while no other costs less by more than a tie, and goes where one does', async () => {
    const free = await chosenFor({});
    const { search } = free;
    const second = search.ties[1]?.members.map((n) => search.paints[n]?.id ?? '') ?? [];
    expect(second).not.toEqual(free.ids);
    expect((await chosenFor({ present: second })).ids).toEqual(second);
    const poor = ['pr254-pyrrole-red', 'pv23-dioxazine-violet'];
    const anew = await chosenFor({ present: poor });
    const least = anew.search.ties[0]?.cost ?? Number.NaN;
    expect(scoreOf(anew.search, poor)).toBeGreaterThan(least + nearTie);
    for (const id of poor) expect(anew.ids).not.toContain(id);
  });

  test('goes where she leaves a paint of it out, wants another in it, or fewer', async () => {
    const { ids } = await chosenFor({});
    const [first = ''] = ids;
    const exclude = await chosenFor({ present: ids, exclude: [first] });
    expect(exclude.ids).not.toContain(first);
    const must = await chosenFor({ present: ids, must: ['pv23-dioxazine-violet'] });
    expect(must.ids).toContain('pv23-dioxazine-violet');
    const fewer = await chosenFor({ present: ids, paletteSize: ids.length - 1 });
    expect(fewer.ids.length).toBeLessThan(ids.length);
  });
});

test('ties are the sets of least cost within 1.0, a dozen at most; the choice is one of them', async () => {
  const { search, ids } = await chosenFor({});
  const costs = search.ties.map(({ cost }) => cost);
  expect(costs.length).toBeLessThanOrEqual(12);
  expect(costs).toEqual(costs.toSorted((one, two) => one - two));
  expect(costs.at(-1)).toBeLessThanOrEqual((costs[0] ?? 0) + nearTie);
  const sets = search.ties.map(({ members }) => members.map((n) => search.paints[n]?.id));
  expect(sets).toContainEqual(ids);
});

test('what is planned is for paints about as dark as those searched for', async () => {
  for (const name of ['mountain snow', 'forest stream', 'seed heads'] as const) {
    const { slots, planned } = await chosenFor({}, readings[name]);
    const plan = await buildPlan(readings[name], {}, noCheckpoint, memory);
    expect(slots.length).toBe(planned.wide.slots.length);
    for (const [n, { target }] of plan.slots.entries())
      expect(Math.abs(target[0] - (slots[n]?.target[0] ?? 0))).toBeLessThan(5);
  }
});

test('of the ties solved wash over wash none is better by 0.6, none as good with fewer paints', async () => {
  const others: number[] = [];
  for (const name of ['seed heads', 'forest stream', 'low key', 'high key'] as const) {
    const { slots, planned, search, ids } = await chosenFor({}, readings[name]);
    let washes: number | undefined;
    const rated: { ids: string[]; rating: number }[] = [];
    for (const set of search.ties.slice(0, 4)) {
      const paints = paintsOf(search, set);
      const solve = washSolver(readings[name], planned, paints, noCheckpoint, memory);
      const { bands } = readings[name];
      washes ??= (await proposeWashes(slots, bands.length, planned.wishes, solve)).washes;
      const numbers = [washes, washes + 1];
      let rating = 0;
      for (const number of numbers) {
        const { facts } = await solve(number);
        rating += ratePalette(search, facts, planned.wide) / numbers.length;
      }
      rated.push({ ids: paints.map(({ id }) => id), rating });
    }
    const own = rated.findIndex((each) => each.ids.join() === ids.join());
    expect(own, name).toBeGreaterThanOrEqual(0);
    for (const each of rated) {
      const fewer = each.ids.length < ids.length;
      expect(each.rating, name).toBeGreaterThan((rated[own]?.rating ?? 0) - (fewer ? 0 : 0.6));
    }
    // Another than the first for a reason only.
    const [first] = rated;
    const gain = (first?.rating ?? 0) - (rated[own]?.rating ?? 0);
    const isFewer = ids.length < (first?.ids.length ?? 0);
    if (own > 0) expect(gain, name).toBeGreaterThan(isFewer ? -0.02 : 0.6);
    others.push(own);
  }
  // It is not always the first.
  expect(Math.max(...others)).toBeGreaterThan(0);
});
