import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { chooseStrokes, type OutlinePiece } from '../../../../app/core/outline/choose-strokes.ts';

// Which lines are worth most: (own).
const piece = (
  from: Point,
  to: Point,
  { turned = false, ...more }: Partial<OutlinePiece> & { turned?: boolean } = {},
): OutlinePiece => {
  const points = Array.from({ length: 11 }, (_, n): Point => {
    const part = n / 10;
    return [from[0] + part * (to[0] - from[0]), from[1] + part * (to[1] - from[1])];
  });
  return {
    kind: 'hard',
    role: 'outer',
    contrast: 20,
    near: 1,
    points: turned ? points.toReversed() : points,
    ...more,
  };
};
const spanOf = (points: readonly Point[]) =>
  [points[0], points.at(-1)].map((point) => point?.map(Math.round)).sort();

describe('pieces', () => {
  test('that go on into each other are one stroke, whichever way round they were measured', () => {
    const lines = chooseStrokes([
      piece([0, 0], [30, 0]),
      piece([60, 1], [30.8, 0.2], { turned: true }),
      piece([61, 1], [90, 2], { turned: true }),
    ]);
    expect(lines).toHaveLength(1);
    expect(spanOf(lines[0]?.points ?? [])).toEqual([
      [0, 0],
      [90, 2],
    ]);
  });

  test.each([0, 45, 90, 135, 180, 225, 270, 315])(
    'go on over a small gap, at %i degrees too',
    (degrees) => {
      const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const at = (mm: number): Point => [30.75 + mm * x, 30.75 + mm * y];
      expect(chooseStrokes([piece(at(-20), at(0)), piece(at(1.2), at(20))])).toHaveLength(1);
      expect(chooseStrokes([piece(at(-20), at(0)), piece(at(1.6), at(20))])).toHaveLength(2);
    },
  );

  test('stay apart where the line turns back or there is a gap', () => {
    expect(chooseStrokes([piece([0, 0], [30, 0]), piece([30, 0], [2, 9])])).toHaveLength(2);
    expect(chooseStrokes([piece([0, 0], [30, 0]), piece([33, 0], [60, 0])])).toHaveLength(2);
    expect(
      chooseStrokes([piece([0, 0], [30, 0]), piece([30, 0], [60, 0], { role: 'white' })]),
    ).toHaveLength(2);
  });

  test('at a fork the straightest goes on', () => {
    const lines = chooseStrokes([
      piece([0, 0], [30, 0]),
      piece([30, 0], [50, 15]),
      piece([30, 0], [60, 1]),
    ]);
    expect(lines.map(({ points }) => spanOf(points))).toContainEqual([
      [0, 0],
      [60, 1],
    ]);
  });

  test('that make a ring are one stroke round', () => {
    const corner = (n: number): Point => [
      50 + 20 * Math.cos((n * Math.PI) / 4),
      50 + 20 * Math.sin((n * Math.PI) / 4),
    ];
    const ring = Array.from({ length: 8 }, (_, n) => piece(corner(n), corner(n + 1)));
    expect(chooseStrokes(ring)).toHaveLength(1);
  });

  test('a stroke changes how it is drawn, but not for a few millimetres', () => {
    const soft = { kind: 'soft' } as const;
    const long = [piece([0, 0], [30, 0]), piece([30, 0], [60, 0], soft)];
    expect(chooseStrokes(long, 1).map(({ kind }) => kind)).toEqual(['hard', 'soft']);
    const short = [piece([0, 0], [30, 0]), piece([30, 0], [32, 0], soft), piece([32, 0], [60, 0])];
    expect(chooseStrokes(short, 1).map(({ kind }) => kind)).toEqual(['hard']);
  });
});

describe('of too many strokes', () => {
  const many = Array.from({ length: 400 }, (_, n) =>
    piece([0, 3 * n], [20 + (n % 40), 3 * n], { contrast: 20 }),
  );
  test('150 are drawn, the long before the short', () => {
    const lines = chooseStrokes(many);
    expect(lines).toHaveLength(150);
    const lengths = lines.map(({ points }) => (points.at(-1)?.[0] ?? 0) - (points[0]?.[0] ?? 0));
    expect(Math.min(...lengths)).toBeGreaterThan(40);
  });

  test.each([
    ['what is near the centre of interest', { near: 1 }, { near: 0.3 }],
    ['what stands out', { contrast: 20 }, { contrast: 6 }],
    ['hard before soft', { kind: 'hard' }, { kind: 'soft' }],
    ['between things before within one', { role: 'outer' }, { role: 'inner' }],
    ['round whites', { role: 'white', contrast: 8 }, { role: 'outer' }],
  ] as const)('%s comes first', (_, one, two) => {
    const [kept] = chooseStrokes([piece([0, 9], [20, 9], two), piece([0, 0], [20, 0], one)], 1);
    expect(kept?.points[0]?.[1]).toBeCloseTo(0, 6);
  });

  test('specks are no strokes, but round whites they are', () => {
    expect(chooseStrokes([piece([0, 0], [1, 0])])).toEqual([]);
    expect(chooseStrokes([piece([0, 0], [1, 0], { role: 'white' })])).toHaveLength(1);
  });
});
