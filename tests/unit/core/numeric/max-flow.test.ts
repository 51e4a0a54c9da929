import { expect, test } from 'vitest';
import { type FlowGrid, findMinimumCut } from '../../../../app/core/numeric/max-flow.ts';
import { openCells } from '../../../../app/core/reading/subject/cut-line.ts';
import { seeded } from '../../../support/reading/seeded.ts';

interface Made {
  readonly grid: FlowGrid;
  /** What a cut costs: 1 for nodes on the source's side. */
  cost(sides: ArrayLike<number>): number;
}

/** Capacities are whole numbers under `range`. */
function madeGrid(width: number, height: number, random: () => number, range = 9): Made {
  const open = openCells(new Uint8Array(width * height).fill(2), { width, height });
  const neighbours = open.nodes;
  const capacities = new Int32Array(neighbours.length);
  for (let arc = 0; arc < neighbours.length; arc++) {
    const other = neighbours[arc] as number;
    if (other > arc >> 3) {
      const units = Math.floor(range * random());
      capacities[arc] = units;
      capacities[other * 8 + 7 - (arc & 7)] = units;
    }
  }
  const excess = Int32Array.from({ length: width * height }, () => Math.floor(25 * random()) - 12);
  const kept = { capacities: capacities.slice(), excess: excess.slice() };
  return {
    grid: { neighbours, capacities, excess },
    cost(sides) {
      let sum = 0;
      for (let node = 0; node < kept.excess.length; node++) {
        const own = kept.excess[node] as number;
        if (own > 0 && sides[node] === 0) sum += own;
        if (own < 0 && sides[node] === 1) sum -= own;
        for (let arc = node * 8; arc < node * 8 + 8; arc++) {
          const other = neighbours[arc] as number;
          if (other >= 0 && sides[node] === 1 && sides[other] === 0) {
            sum += kept.capacities[arc] as number;
          }
        }
      }
      return sum;
    },
  };
}

test('costs what the cheapest of all cuts costs, on small grids', () => {
  const random = seeded(11);
  for (let n = 0; n < 60; n++) {
    const [width, height] = [1 + (n % 4), 1 + (Math.floor(n / 4) % 3)];
    const { grid, cost } = madeGrid(width, height, random);
    let least = Number.POSITIVE_INFINITY;
    for (let bits = 0; bits < 1 << (width * height); bits++) {
      least = Math.min(
        least,
        cost(Array.from({ length: width * height }, (_, i) => (bits >> i) & 1)),
      );
    }
    expect(cost(findMinimumCut(grid))).toBe(least);
  }
});

/** The slow way: shortest paths one after the other (Edmonds, Karp 1972) to the same largest flow. */
function largestFlow({ neighbours, capacities, excess }: FlowGrid): number {
  let total = 0;
  for (;;) {
    const from = new Int32Array(excess.length).fill(-2);
    const waiting: number[] = [];
    excess.forEach((own, node) => {
      if (own <= 0) return;
      from[node] = -1;
      waiting.push(node);
    });
    let end = -1;
    for (let at = 0; at < waiting.length && end < 0; at++) {
      const node = waiting[at] as number;
      if ((excess[node] as number) < 0) end = node;
      for (let arc = node * 8; arc < node * 8 + 8 && end < 0; arc++) {
        const other = neighbours[arc] as number;
        if (other < 0 || from[other] !== -2 || capacities[arc] === 0) continue;
        from[other] = arc;
        waiting.push(other);
      }
    }
    if (end < 0) return total;
    let flow = -(excess[end] as number);
    let start = end;
    for (let arc = from[end] as number; arc >= 0; arc = from[start] as number) {
      flow = Math.min(flow, capacities[arc] as number);
      start = arc >> 3;
    }
    flow = Math.min(flow, excess[start] as number);
    excess[start] = (excess[start] as number) - flow;
    excess[end] = (excess[end] as number) + flow;
    for (let node = end; (from[node] as number) >= 0; ) {
      const arc = from[node] as number;
      const back = node * 8 + 7 - (arc & 7);
      capacities[arc] = (capacities[arc] as number) - flow;
      capacities[back] = (capacities[back] as number) + flow;
      node = arc >> 3;
    }
    total += flow;
  }
}

// Ford, Fulkerson, 'Maximal Flow through a Network', 1956: the largest flow is what the cheapest cut costs.
test('costs as much as the largest flow, on larger grids', () => {
  const random = seeded(12);
  for (let n = 0; n < 6; n++) {
    const { grid, cost } = madeGrid(14 + n, 11, random);
    const slow = largestFlow({
      neighbours: grid.neighbours,
      capacities: grid.capacities.slice(),
      excess: grid.excess.slice(),
    });
    expect(cost(findMinimumCut(grid))).toBe(slow);
  }
});

test('costs as much as the largest flow where arcs carry one unit or two', () => {
  const random = seeded(13);
  for (let n = 0; n < 60; n++) {
    const { grid, cost } = madeGrid(9 + (n % 4), 8, random, 2 + (n % 2));
    const slow = largestFlow({
      neighbours: grid.neighbours,
      capacities: grid.capacities.slice(),
      excess: grid.excess.slice(),
    });
    expect(cost(findMinimumCut(grid))).toBe(slow);
  }
});
