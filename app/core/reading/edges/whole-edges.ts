import type { Point } from '../../colour/lab.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { Edge, EdgeKind } from './edge.ts';

/** Ends this near to each other are one place, as a share of the long side: 1½ mm of a quarter sheet (own). */
const joint = 0.004;
/** So far back along a stretch its direction at the end is taken, as a share of the long side (own). */
const lead = 0.012;
/** Goes on: it turns by no more than 60° there (own). */
const straightest = 0.5;

/** Hard and found are both sharp: along a line one passes into the other. */
const sortOf: Readonly<Record<EdgeKind, string>> = {
  hard: 'sharp',
  found: 'sharp',
  soft: 'soft',
  lost: 'lost',
};

type Stretch = Pick<Edge, 'a' | 'b' | 'kind' | 'path'>;

interface End {
  readonly edge: number;
  /** In shares of the long side. */
  readonly at: Point;
  /** Out of the stretch, of length 1. */
  readonly out: Point;
}

function endsOf(stretch: Stretch, edge: number, { width, height }: PixelSize): End[] {
  const long = Math.max(width, height);
  const places = stretch.path.map(([x, y]): Point => [(x * width) / long, (y * height) / long]);
  const first = places[0];
  if (!first || places.length < 2) return [];
  return [places, [...places].reverse()].map((course) => {
    const at = course[0];
    const away = ([x, y]: Point): number => Math.hypot(x - at[0], y - at[1]);
    const back = course.find((place) => away(place) >= lead) ?? course[course.length - 1];
    const length = away(back) || 1;
    return { edge, at, out: [(at[0] - back[0]) / length, (at[1] - back[1]) / length] };
  });
}

const sharesSide = (one: Stretch, other: Stretch): boolean =>
  one.a === other.a || one.a === other.b || one.b === other.a || one.b === other.b;

/** For every end the one it goes on in most nearly straight; -1 where it stops or is crossed. */
function nextEnds(edges: readonly Stretch[], ends: readonly End[]): Int32Array {
  const cells = new Map<string, number[]>();
  const cellOf = (x: number, y: number): string => `${x}/${y}`;
  ends.forEach(({ at: [x, y] }, i) => {
    const cell = cellOf(Math.floor(x / joint), Math.floor(y / joint));
    cells.set(cell, [...(cells.get(cell) ?? []), i]);
  });
  return Int32Array.from(ends, ({ edge, at: [x, y], out }) => {
    const [column, row] = [Math.floor(x / joint), Math.floor(y / joint)];
    const near = [-1, 0, 1].flatMap((right) =>
      [-1, 0, 1].flatMap((down) => cells.get(cellOf(column + right, row + down)) ?? []),
    );
    let best = -1;
    let most = straightest;
    for (const i of near.sort((one, other) => one - other)) {
      const end = ends[i];
      const [mine, its] = [edges[edge], edges[end.edge]];
      if (end.edge === edge || sortOf[mine.kind] !== sortOf[its.kind]) continue;
      if (!sharesSide(mine, its) || Math.hypot(end.at[0] - x, end.at[1] - y) > joint) continue;
      const straight = -(out[0] * end.out[0] + out[1] * end.out[1]);
      if (straight <= most) continue;
      most = straight;
      best = i;
    }
    return best;
  });
}

/**
 * Which stretches are one edge to the eye: those that go on in each other nearly straight, share a side and are alike
 * in sharpness. Answers for every stretch the least index of its whole edge: equal numbers belong together.
 */
export function wholeEdges(edges: readonly Stretch[], size: PixelSize): Int32Array {
  const whole = Int32Array.from(edges, (_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    while (whole[root] !== root) root = whole[root];
    return root;
  };
  const ends = edges.flatMap((edge, i) => endsOf(edge, i, size));
  const next = nextEnds(edges, ends);
  next.forEach((other, i) => {
    if (other < 0 || next[other] !== i) return; // both have to choose each other
    const [one, two] = [rootOf(ends[i].edge), rootOf(ends[other].edge)];
    whole[Math.max(one, two)] = Math.min(one, two);
  });
  return whole.map((_, i) => rootOf(i));
}

/** All stretches of the whole edge one of them belongs to, in the order of the list. */
export const stretchesOf = (whole: Int32Array, index: number): number[] =>
  [...whole.keys()].filter((i) => whole[i] === whole[index]);

/** What is told of a whole edge: the kind most of it has, its length, and what lies between its sides on the way. */
export function joinStretches(stretches: readonly Edge[]): Edge {
  const longest = stretches.reduce((best, one) => (one.lengthMm > best.lengthMm ? one : best));
  const lengthMm = stretches.reduce((sum, one) => sum + one.lengthMm, 0);
  const mean = (figure: (edge: Edge) => number): number =>
    lengthMm > 0
      ? stretches.reduce((sum, one) => sum + figure(one) * one.lengthMm, 0) / lengthMm
      : figure(longest);
  const mostly = (is: (edge: Edge) => boolean): boolean => mean((edge) => Number(is(edge))) > 0.5;
  return {
    ...longest,
    lengthMm,
    contrast: mean(({ contrast }) => contrast),
    widthMm: mean(({ widthMm }) => widthMm),
    widthShare: mean(({ widthShare }) => widthShare),
    graded: mostly(({ graded }) => graded),
    heldByColour: mostly(({ heldByColour }) => heldByColour),
    outOfFocus: mostly(({ outOfFocus }) => outOfFocus),
  };
}
