import { describe, expect, test } from 'vitest';
import { cutLine, cutSide, openCells } from '../../../../../app/core/reading/subject/cut-line.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const { ground, subject, open } = cutSide;

/** Colours in codes: lightness 2.55 to one L*, a* and b* as they are. */
interface Picture {
  readonly size: { readonly width: number; readonly height: number };
  readonly lightness: Uint8ClampedArray;
  readonly a: Int8Array;
  readonly b: Int8Array;
}

/** Every pair of neighbours once, in eight directions, with at least one of them open. */
function* neighbours({ size: { width, height } }: Picture, known: Uint8Array) {
  for (let i = 0; i < known.length; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    for (const [dx, dy] of [
      [1, 0],
      [-1, 1],
      [0, 1],
      [1, 1],
    ] as const) {
      if (x + dx < 0 || x + dx >= width || y + dy >= height) continue;
      const other = i + dy * width + dx;
      if (known[i] !== open && known[other] !== open) continue;
      yield { i, other, length: dx !== 0 && dy !== 0 ? Math.SQRT1_2 : 1 };
    }
  }
}

/**
 * What a line costs, written down plainly (Boykov, Jolly 2001): three for a px of line in plain colour, down to 8 %
 * of that where colours differ most by half of their mean difference; and what the sides' colours speak against.
 */
function costOf(picture: Picture, known: Uint8Array, favour: readonly number[], sides: Uint8Array) {
  const apart = (i: number, k: number): number =>
    (((picture.lightness[i] ?? 0) - (picture.lightness[k] ?? 0)) / 2.55) ** 2 +
    ((picture.a[i] ?? 0) - (picture.a[k] ?? 0)) ** 2 +
    ((picture.b[i] ?? 0) - (picture.b[k] ?? 0)) ** 2;
  let [sum, count] = [0, 0];
  for (const { i, other } of neighbours(picture, known)) {
    // Seen from either cell that is open.
    const times = Number(known[i] === open) + Number(known[other] === open);
    sum += times * apart(i, other);
    count += times;
  }
  const mean = Math.max(1.5, sum / count);
  let cost = 0;
  for (const { i, other, length } of neighbours(picture, known)) {
    if (sides[i] === sides[other]) continue;
    cost += 3 * length * (0.08 + 0.92 * Math.exp(-apart(i, other) / mean / 2));
  }
  for (const [i, side] of sides.entries()) {
    const own = (side === subject ? -1 : 1) * (favour[i] ?? 0);
    if (known[i] === open) cost += Math.max(0, own);
  }
  return cost;
}

/** The least cost of all ways to sort the open cells. */
function leastOf(picture: Picture, known: Uint8Array, favour: readonly number[]): number {
  const cells = [...known.keys()].filter((i) => known[i] === open);
  let least = Number.POSITIVE_INFINITY;
  for (let bits = 0; bits < 1 << cells.length; bits++) {
    const sides = known.slice();
    for (const [n, i] of cells.entries()) sides[i] = (bits >> n) & 1;
    least = Math.min(least, costOf(picture, known, favour, sides));
  }
  return least;
}

describe('the line of least cost', () => {
  test.each([
    ['in strong colours', 60, 3],
    ['in faint ones', 4, 1],
    ['in a plain one, where grain counts for little', 1, 2],
  ])(
    'seeded pictures of 5 x 4 cells %s: no way to sort ten open cells costs less',
    (_, spread, strength) => {
      const random = seeded(21);
      for (let round = 0; round < 12; round++) {
        const size = { width: 5, height: 4 };
        const picture: Picture = {
          size,
          lightness: Uint8ClampedArray.from(
            { length: 20 },
            () => 128 + spread * 2.55 * (random() - 0.5),
          ),
          a: Int8Array.from({ length: 20 }, () => spread * (random() - 0.5)),
          b: Int8Array.from({ length: 20 }, () => spread * (random() - 0.5)),
        };
        const known = new Uint8Array(20).map(() => (random() < 0.5 ? ground : subject));
        for (let n = 0; n < 10; ) {
          const i = Math.floor(20 * random());
          if (known[i] === open) continue;
          known[i] = open;
          n++;
        }
        const favour = Array.from({ length: 20 }, () => strength * (random() - 0.5));
        const sides = known.slice();
        cutLine({ colours: picture, known: sides, favourAt: (i) => favour[i] ?? 0 });
        for (const [i, side] of known.entries()) if (side !== open) expect(sides[i]).toBe(side);
        // Capacities are whole: 256 to one of cost, about 40 of them; the table of holds has 64 steps to a mean.
        const cost = costOf(picture, known, favour, sides);
        expect(cost - leastOf(picture, known, favour)).toBeLessThan(0.06);
      }
    },
  );

  test('grain of a plain colour does not hold the line: it is taken for 1.5 squared at least', () => {
    // One L* apart between the left and the right half, which nothing else tells apart but faint favours.
    const picture: Picture = {
      size: { width: 6, height: 1 },
      lightness: Uint8ClampedArray.of(120, 120, 120, 123, 123, 123),
      a: new Int8Array(6),
      b: new Int8Array(6),
    };
    const line = (favour: readonly number[]) => {
      const known = Uint8Array.of(subject, open, open, open, open, ground);
      cutLine({ colours: picture, known, favourAt: (i) => favour[i] ?? 0 });
      return [...known];
    };
    // exp(-1.38 / 1.5 / 2) = 0.63: a px of line costs 1.98 there and 3 elsewhere.
    expect(line([0, 0, 0, 0, 0, 0])).toEqual([1, 1, 1, 0, 0, 0]);
    expect(line([0, 0, 0, 0.9, 0, 0])).toEqual([1, 1, 1, 0, 0, 0]);
    expect(line([0, 0, 0, 1.15, 0, 0])).toEqual([1, 1, 1, 1, 0, 0]);
  });
});

test('open cells are numbered as the picture is read, with what lies around them in eight directions', () => {
  const known = Uint8Array.of(open, ground, open, subject, open, ground);
  const { cells, around, nodes } = openCells(known, { width: 3, height: 2 });
  expect([...cells]).toEqual([0, 2, 4]);
  expect([...around]).toEqual([
    ...[-1, -1, -1, -1, 1, -1, 3, 4],
    ...[-1, -1, -1, 1, -1, 4, 5, -1],
    ...[0, 1, 2, 3, 5, -1, -1, -1],
  ]);
  expect([...nodes]).toEqual([
    ...[-1, -1, -1, -1, -1, -1, -1, 2],
    ...[-1, -1, -1, -1, -1, 2, -1, -1],
    ...[0, -1, 1, -1, -1, -1, -1, -1],
  ]);
});
