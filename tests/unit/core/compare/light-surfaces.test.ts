import { describe, expect, test } from 'vitest';
import type { CellKind, LightCell } from '../../../../app/core/compare/light-cells.ts';
import { type LightSpace, lightSpaces } from '../../../../app/core/compare/light-spaces.ts';
import {
  fitSurfaces,
  guesses,
  straightened,
  vergeTerm,
} from '../../../../app/core/compare/light-surfaces.ts';
import { unsensed } from '../../../../app/core/paint/measure/camera.ts';

/** The light acts on what sensors catch. */
const bySensors = lightSpaces[0] as LightSpace;

// Cells lit by the tests' own formula; what a kind is worth is as the file says it. Limits are (own).

/** What the light over the expected is, as a logarithm, and that of red and of blue beside it. */
type Logs = readonly [bright: number, red: number, blue: number];

function cellAt(kind: CellKind, x: number, y: number, [bright, red, blue]: Logs): LightCell {
  // In shares of white, so that no channel leaves 0..1.
  const base = kind === 'paint' ? 0.2 : 0.5;
  const light = unsensed([
    base * Math.exp(bright + red),
    base * Math.exp(bright),
    base * Math.exp(bright + blue),
  ]);
  return { kind, x, y, light, expected: unsensed([base, base, base]), lightness: 60 };
}

/** A grid of cells of one kind over a sheet of 3 by 2. */
function gridOf(
  kind: CellKind,
  logs: (x: number, y: number, n: number) => Logs,
  [columns, rows] = [18, 12],
): LightCell[] {
  return Array.from({ length: columns * rows }, (_, n) => {
    const x = ((n % columns) + 0.5) / (columns / 2) - 1;
    const y = ((Math.floor(n / columns) + 0.5) / (rows / 2) - 1) / 1.5;
    return cellAt(kind, x, y, logs(x, y, n));
  });
}
const plain = (): Logs => [0, 0, 0];
const guessOf = (kind: CellKind, share?: number): number =>
  guesses.findIndex(([own, part]) => own === kind && (share === undefined || part === share));
const fitted = (cells: readonly LightCell[], guess = guessOf('paper'), curve = 0) => {
  const found = fitSurfaces(straightened(cells, curve, bySensors), guess);
  if (!found) throw new Error('no surface');
  return found;
};

describe('a cell before surfaces are laid through it', () => {
  test('is what sensors caught over what they would catch in even light, in logarithms', () => {
    const [cell] = straightened([cellAt('paint', 0.4, -0.3, [-0.2, 0.07, -0.05])], 0, bySensors);
    expect(cell?.bright).toBeCloseTo(-0.2, 3);
    expect(cell?.red).toBeCloseTo(0.07, 3);
    expect(cell?.blue).toBeCloseTo(-0.05, 3);
    const wanted = [1, 0.4, -0.3, 0.16, -0.12, 0.09, 0];
    for (const [n, term] of cell?.row.entries() ?? []) expect(term).toBeCloseTo(wanted[n] ?? 9, 10);
    const [beside] = straightened([cellAt('verge', 0, 0, [0, 0, 0])], 0, bySensors);
    expect(beside?.row[vergeTerm]).toBe(1);
  });

  test('a curve is taken back channel by channel: darks were darker, lights lighter', () => {
    const [dark] = straightened([cellAt('paint', 0, 0, [-1, 0, 0])], 0.3, bySensors);
    const [light] = straightened([cellAt('paint', 0, 0, [0.5, 0, 0])], 0.3, bySensors);
    expect(Number(dark?.bright)).toBeGreaterThan(-0.9);
    expect(Number(light?.bright)).toBeLessThan(0.45);
  });

  test('black has a logarithm too', () => {
    const black = { ...cellAt('paint', 0, 0, [0, 0, 0]), light: [0, 0, 0] as const };
    const [cell] = straightened([black], 0, bySensors);
    expect(cell?.bright).toBeCloseTo(Math.log(1e-4) - Math.log(0.2), 5);
    expect(cell?.red).toBe(0);
  });
});

describe('the light of a sheet of bare paper', () => {
  test('is found with its fall-off, its lamp and its colour', () => {
    const cells = gridOf('paper', (x, y) => [
      -0.3 + 0.1 * x - 0.08 * y - 0.06 * x * x + 0.05 * x * y - 0.04 * y * y,
      0.03 + 0.05 * x - 0.02 * y,
      -0.02 - 0.04 * x + 0.03 * y,
    ]);
    const { bright, red, blue, left, cost } = fitted(cells);
    const wanted = [-0.3, 0.1, -0.08, -0.06, 0.05, -0.04];
    for (const [n, own] of wanted.entries())
      expect(Math.abs(Number(bright[n]) - own)).toBeLessThan(0.003);
    for (const [n, own] of [0.03, 0.05, -0.02].entries())
      expect(Math.abs(Number(red[n]) - own)).toBeLessThan(0.003);
    for (const [n, own] of [-0.02, -0.04, 0.03].entries())
      expect(Math.abs(Number(blue[n]) - own)).toBeLessThan(0.003);
    expect(Math.max(...left.map(Math.abs))).toBeLessThan(0.004);
    expect(cost).toBeLessThan(0.2);
  });

  test('a quarter of it under something dark, or under something red, pulls nothing', () => {
    const isCovered = (x: number, y: number): boolean => x < -0.4 && y < 0.1;
    for (const odd of [
      [-0.7, 0, 0],
      [0, 0.4, -0.3],
    ] as const) {
      const cells = gridOf('paper', (x, y) => (isCovered(x, y) ? odd : [0.1 * x, 0, 0]));
      const { bright, red, blue, left } = fitted(cells);
      expect(Math.abs(Number(bright[0]))).toBeLessThan(0.01);
      expect(Math.abs(Number(bright[1]) - 0.1)).toBeLessThan(0.01);
      expect(Math.abs(Number(red[0]))).toBeLessThan(0.01);
      expect(Math.abs(Number(blue[0]))).toBeLessThan(0.01);
      for (const [n, { x, y }] of cells.entries())
        if (!isCovered(x, y)) expect(Math.abs(Number(left[n]))).toBeLessThan(0.02);
    }
  });

  test('a few cells along a line say little of how light goes across it: no fall-off is made up', () => {
    const line = Array.from({ length: 12 }, (_, n) => cellAt('paper', n / 6 - 1, 0, [0.1, 0, 0]));
    const { bright } = fitted(line);
    for (const n of [2, 4, 5]) expect(Math.abs(Number(bright[n]))).toBeLessThan(1e-6);
    expect(bright[0]).toBeCloseTo(0.1, 3);
  });
});

describe('who says how bright the light is', () => {
  test('bare paper, where her paints as one are a tenth too light', () => {
    const paper = gridOf('paper', plain);
    const paint = gridOf('paint', () => [0.1, 0, 0]);
    const { bright } = fitted([...paper, ...paint]);
    // All painted cells together are as sure as 0.03, all of the paper far surer.
    expect(Number(bright[0])).toBeGreaterThan(0);
    expect(Number(bright[0])).toBeLessThan(0.012);
  });

  test('all painted cells are as sure as 0.03, paper cell by cell, of a hundred', () => {
    const paper = gridOf('paper', plain, [4, 3]);
    const { bright } = fitted([...paper, ...gridOf('paint', () => [0.03, 0, 0])]);
    // Surenesses are inverse variances; what strays by 0.03 of 0.1 counts so much less (Geman and McClure 1987).
    const bare = (12 * 100) / (12 + 216) / 0.03 ** 2;
    const painted = 1 / 0.03 ** 2 / (1 + 0.3 ** 2) ** 2;
    const wanted = (0.03 * painted) / (painted + bare);
    expect(Number(bright[0])).toBeGreaterThan(0.9 * wanted);
    expect(Number(bright[0])).toBeLessThan(1.2 * wanted);
  });

  test('painted cells do so the less the more of them there are: they are weak as one', () => {
    const paper = gridOf('paper', plain, [6, 4]);
    const pulled = (columns: number): number => {
      const { bright } = fitted([...paper, ...gridOf('paint', () => [0.1, 0, 0], [columns, 8])]);
      return Number(bright[0]);
    };
    expect(Math.abs(pulled(12) - pulled(48))).toBeLessThan(0.01);
  });

  test('painted cells alone where nothing is bare: their middle', () => {
    const paint = gridOf('paint', (_x, _y, n) => [-0.5 + (n % 2 === 0 ? 0.02 : -0.02), 0, 0]);
    const { bright } = fitted(paint, guessOf('paint', 0.5));
    expect(Math.abs(Number(bright[0]) + 0.5)).toBeLessThan(0.01);
  });

  test('a verge that is darker by one step is darker by that, and the sheet is not', () => {
    const verge = gridOf('verge', () => [-0.05, 0, 0.02], [20, 2]);
    const { bright, blue } = fitted([...gridOf('paper', plain), ...verge]);
    expect(Math.abs(Number(bright[0]))).toBeLessThan(0.003);
    expect(Math.abs(Number(bright[vergeTerm]) + 0.05)).toBeLessThan(0.003);
    expect(Math.abs(Number(blue[3]) - 0.02)).toBeLessThan(0.003);
  });
});

/** Cells of one kind, so many of every four lit as paper, the others as something quite else. */
const quarterOff = (kind: CellKind): LightCell[] =>
  gridOf(kind, (_x, _y, n) => [n % 4 === 0 ? -3 : 0, 0, 0], [20, 12]);

describe('how badly cells agree', () => {
  test.each([
    ['paint', 60, guessOf('paint', 0.5)],
    ['paper', 40, guessOf('paper')],
    ['verge', 6, guessOf('verge')],
  ] as const)(
    'all of the %s counts as %i cells: a quarter astray costs a quarter of them',
    (kind, worth, guess) => {
      expect(fitted(gridOf(kind, plain), guess).cost).toBeLessThan(0.01 * worth);
      const { cost } = fitted(quarterOff(kind), guess);
      expect(cost / (worth / 4)).toBeGreaterThan(0.97);
      expect(cost / (worth / 4)).toBeLessThan(1.03);
    },
  );

  test.each([
    ['paper', 0.03],
    ['verge', 0.04],
    ['paint', 0.1],
  ] as const)('a cell of %s that strays by %d is half astray', (kind, stray) => {
    const worth = { paper: 40, verge: 6, paint: 60 }[kind];
    const guess = kind === 'paint' ? guessOf('paint', 0.5) : guessOf(kind);
    // One in ten, as many above as below, so that the surface stays where it is.
    const off = (n: number): number => (n % 20 === 0 ? stray : n % 20 === 10 ? -stray : 0);
    const { cost } = fitted(
      gridOf(kind, (_x, _y, n) => [off(n), 0, 0], [20, 12]),
      guess,
    );
    expect(cost / (worth / 20)).toBeGreaterThan(0.9);
    expect(cost / (worth / 20)).toBeLessThan(1.1);
  });

  test('under a dozen of bare cells are worth less: it is hardly bare paper', () => {
    const paint = gridOf('paint', plain);
    const costOf = (count: number): number => {
      // One of them astray, so that its worth is what it costs.
      const bare = Array.from({ length: count }, (_, n) =>
        cellAt('paper', n / count - 0.5, 0, [n === 0 ? -3 : 0, 0, 0]),
      );
      return fitted([...paint, ...bare], guessOf('paint', 0.5)).cost;
    };
    expect(costOf(6)).toBeGreaterThan(0.95 * (40 / 12));
    expect(costOf(6)).toBeLessThan(1.05 * (40 / 12));
    expect(costOf(24)).toBeLessThan(1.05 * (40 / 24));
  });

  test('a cell of another hue strays too', () => {
    const hued = gridOf('paper', (_x, _y, n) => [0, n % 4 === 0 ? 1 : 0, 0], [20, 12]);
    const { cost } = fitted(hued);
    expect(cost).toBeGreaterThan(9.5);
    expect(cost).toBeLessThan(10.5);
  });

  test('paint is worth as much beside bare paper, however much of that there is', () => {
    const { cost } = fitted([...gridOf('paper', plain), ...quarterOff('paint')]);
    expect(cost).toBeGreaterThan(14.5);
    expect(cost).toBeLessThan(15.5);
  });

  test('a verge of another tint costs nothing by it: it is taken out as its offset is', () => {
    const verge = gridOf('verge', () => [0, 0.05, -0.05], [20, 2]);
    const { cost } = fitted([...gridOf('paper', plain), ...verge]);
    expect(cost).toBeLessThan(0.1);
  });

  test('a verge that is not as light as the sheet costs by its offset, a tenth being one deviation', () => {
    const verge = gridOf('verge', () => [-0.1, 0, 0], [20, 2]);
    const { cost } = fitted([...gridOf('paper', plain), ...verge]);
    expect(cost).toBeGreaterThan(0.9);
    expect(cost).toBeLessThan(1.1);
  });
});

describe('first guesses of the level', () => {
  test('the middle of bare paper, the lighter of the verge, quarters of what is painted', () => {
    expect(guesses).toEqual([
      ['paper', 0.5],
      ['verge', 0.8],
      ['paint', 0.25],
      ['paint', 0.5],
      ['paint', 0.75],
    ]);
  });

  test('of what there is none of none is made', () => {
    const paper = straightened(gridOf('paper', plain), 0, bySensors);
    expect(fitSurfaces(paper, guessOf('paper'))).not.toBeNull();
    expect(fitSurfaces(paper, guessOf('verge'))).toBeNull();
    expect(fitSurfaces(paper, guessOf('paint', 0.5))).toBeNull();
  });

  test('decide between two levels that many cells agree on', () => {
    // Half of what is painted lies far lighter than the other half.
    const halves = gridOf('paint', (_x, _y, n) => [n % 2 === 0 ? 0.6 : -0.6, 0, 0]);
    const levelBy = (share: number): number =>
      Number(fitted(halves, guessOf('paint', share)).bright[0]);
    expect(levelBy(0.25)).toBeCloseTo(-0.6, 1);
    expect(levelBy(0.75)).toBeCloseTo(0.6, 1);
    // Paper of a verge of which most is board: the lightest fifth is believed.
    const board = gridOf('verge', (_x, _y, n) => [n % 4 === 0 ? 0 : -1.2, 0, 0], [20, 2]);
    expect(Number(fitted(board, guessOf('verge')).bright[0])).toBeCloseTo(0, 1);
  });
});
