import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { insertionSort } from '../../../../../app/core/numeric/filter-series.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { contourLine } from '../../../../../app/core/raster/smooth-line.ts';
import { traceContours } from '../../../../../app/core/raster/trace-contours.ts';
import type { Edge, EdgeKind } from '../../../../../app/core/reading/edges/edge.ts';
import type { MeasuredContour } from '../../../../../app/core/reading/edges/edge-profile.ts';
import {
  describeEdge,
  type EdgeRun,
  edgeRuns,
  roundToDigits,
} from '../../../../../app/core/reading/edges/edge-runs.ts';
import { rasterOf } from '../../../../support/reading/plain-raster.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const side = 64;
const size = { width: side, height: side };
type At<T> = (x: number, y: number) => T;

/** The only contour between two slots, as if measured every eight px: the same blur and contrast all along. */
function measuredLine(isBeyond: At<boolean>, sigma: number): MeasuredContour {
  const slots = new Uint8Array(side * side).map((_, i) =>
    isBeyond(i % side, Math.floor(i / side)) ? 1 : 0,
  );
  const [contour] = runToEnd(traceContours(slots, size));
  if (!contour) throw new Error('no contour');
  const line = contourLine(contour);
  const count = Math.round(line.count / 8);
  const place = (_: unknown, n: number): number => Math.floor(((n + 0.5) * line.count) / count);
  return {
    contour,
    line,
    places: Int32Array.from({ length: count }, place),
    contrasts: new Float32Array(count).fill(2.04),
    sigmas: new Float32Array(count).fill(sigma),
    lengths: new Float32Array(count).fill(side / count),
  };
}

interface Drawn {
  readonly labAt?: At<Lab>;
  readonly run?: Partial<EdgeRun>;
  readonly blurPx?: number;
  readonly isOutOfFocus?: At<boolean>;
}

function described(measured: MeasuredContour, drawn: Drawn): Edge {
  const { labAt = () => [50, 0, 0], blurPx = 0, isOutOfFocus = () => false } = drawn;
  const to = measured.places.length;
  const run: EdgeRun = { kind: 'lost', from: 0, to, lengthPx: side, ...drawn.run };
  const raster = rasterOf(side, side, labAt);
  return describeEdge(measured, run, { raster, pxPerMm: 2, blurPx, isOutOfFocus });
}

const grey: Lab = [50, 0, 0];
const rose: Lab = [50, 25, 0];

/** Which side of a straight line through the middle a place lies on. */
const beyond: Record<string, At<boolean>> = {
  upright: (x) => x >= 32,
  level: (_x, y) => y >= 32,
  'falling to the right': (x, y) => y >= x + 1,
  'rising to the right': (x, y) => x + y >= side,
};

// Limits and figures are (own): the docstrings of what is tested say why.
describe('an edge lost in value', () => {
  test.each(Object.entries(beyond))(
    'is held by another colour on its other side, and by none where there is none: %s',
    (_, isBeyond) => {
      const line = measuredLine(isBeyond, 1);
      const held = (labAt: At<Lab>): boolean => described(line, { labAt }).heldByColour;
      expect(held((x, y) => (isBeyond(x, y) ? rose : grey))).toBe(true);
      expect(held((x, y) => (isBeyond(x, y) ? grey : rose))).toBe(true);
      expect(held(() => rose)).toBe(false);
      // A slight difference in colour holds nothing.
      expect(held((x, y) => (isBeyond(x, y) ? [50, 12, 0] : grey))).toBe(false);
    },
  );

  test('only a lost one needs its colours to hold it', () => {
    const line = measuredLine((x) => x >= 32, 1);
    const labAt = (x: number): Lab => (x >= 32 ? rose : grey);
    expect(described(line, { labAt, run: { kind: 'found' } }).heldByColour).toBe(false);
  });

  test('is judged by the colours along its own stretch', () => {
    const line = measuredLine((x) => x >= 32, 1);
    const half = line.places.length / 2;
    const isUpper = (n: number): boolean => (line.line.y[line.places[n] as number] as number) < 32;
    const labAt = (x: number, y: number): Lab => (x >= 32 && y < 32 ? rose : grey);
    const stretches = [0, half].map((from) => ({ from, to: from + half }));
    // One place alone, though the next one, or the first of all, lies on the other half.
    const single = [half - 1, 2 * half - 1].map((from) => ({ from, to: from + 1 }));
    for (const run of [...stretches, ...single])
      expect(described(line, { labAt, run }).heldByColour).toBe(isUpper(run.from));
  });

  test('has its colours taken just beyond its blur, and no farther than 12 px', () => {
    const fringe =
      (widthPx: number) =>
      (x: number): Lab =>
        x >= 32 + widthPx ? rose : grey;
    const held = (sigma: number, widthPx: number): boolean =>
      described(
        measuredLine((x) => x >= 32, sigma),
        { labAt: fringe(widthPx) },
      ).heldByColour;
    expect([held(1, 2), held(1, 4)]).toEqual([true, false]);
    expect([held(6, 7), held(6, 9)]).toEqual([true, false]);
    expect([held(20, 11), held(20, 13)]).toEqual([true, false]);
  });

  test("close to the picture's border keeps to what the picture has", () => {
    const line = measuredLine((_x, y) => y >= 61, 20);
    const labAt = (_x: number, y: number): Lab => (y >= 61 ? rose : grey);
    expect(described(line, { labAt }).heldByColour).toBe(true);
  });
});

describe('the course of an edge', () => {
  const upright = measuredLine((x) => x >= 32, 1);
  const pathOf = (measured: MeasuredContour, from: number, to: number) =>
    described(measured, { run: { from, to } }).path;

  test('straight, it is told by its two ends, in shares of the sides', () => {
    const ends = [...pathOf(upright, 0, upright.places.length)].sort(([, y], [, z]) => y - z);
    expect(ends.map(([x]) => x)).toEqual([0.5, 0.5]);
    expect(ends[0]?.[1]).toBeLessThan(0.02);
    expect(ends[1]?.[1]).toBeGreaterThan(0.98);
  });

  test('stretches that follow one another meet, each as long as its share', () => {
    const third = Math.floor(upright.places.length / 3);
    const [one, other] = [pathOf(upright, 0, third), pathOf(upright, third, 3 * third)];
    expect(one.at(-1)).toEqual(other[0]);
    const lengthOf = (path: Edge['path']): number =>
      Math.abs((path.at(-1)?.[1] ?? 0) - (path[0]?.[1] ?? 0));
    expect(lengthOf(one)).toBeCloseTo(third / upright.places.length, 1);
  });

  test('round, it closes, keeps within a pixel of the line and to four digits', () => {
    const round = measuredLine((x, y) => Math.hypot(x - 31.5, y - 31.5) < 20, 1);
    const path = pathOf(round, 0, round.places.length);
    expect(path[0]).toEqual(path.at(-1));
    expect(path.length).toBeGreaterThan(7);
    for (const [x, y] of path) {
      expect(Math.abs(Math.hypot(x - 0.5, y - 0.5) - 20 / side)).toBeLessThan(1 / side);
      for (const share of [x, y]) expect(share).toBe(Number(share.toFixed(4)));
    }
  });
});

describe('the figures of an edge', () => {
  test('contrast and width are the medians along its own stretch, whatever strays', () => {
    const line = measuredLine((x) => x >= 32, 1);
    line.contrasts.set([90, 10, 30, 20, 40, 7, 7, 7]);
    line.sigmas.set([1, 9, 3, 2, 4, 0, 0, 0]);
    const edge = described(line, { run: { from: 0, to: 5 } });
    expect(edge.contrast).toBe(30);
    expect(edge.widthMm).toBeCloseTo((2.563 * 3) / 2, 1);
    // In a closed contour a stretch runs on past the last sample to the first.
    expect(described(line, { run: { from: 5, to: 10 } }).contrast).toBe(7);
  });

  test("the photo's own blur is taken off its width; lengths are in mm on the sheet", () => {
    const edge = described(
      measuredLine((x) => x >= 32, 5),
      { blurPx: 3 },
    );
    // What is left of a sigma of 5 px without one of 3 px is 4 px; 10 to 90 % is 2.563 of them.
    expect(edge.widthMm).toBeCloseTo((2.563 * 4) / 2, 1);
    expect(edge.widthShare).toBeCloseTo((2.563 * 4) / side, 3);
    expect([edge.lengthMm, edge.contrast]).toEqual([32, 2]);
  });

  test('wider than 6 % of the long side it is a graded wash', () => {
    const graded = (share: number): boolean =>
      described(
        measuredLine((x) => x >= 32, (share * side) / 2.563),
        {},
      ).graded;
    expect([graded(0.055), graded(0.065)]).toEqual([false, true]);
  });

  test('soft, and more than half of it where the photo is out of focus: the lens may have made it so', () => {
    const line = measuredLine((x) => x >= 32, 3);
    const flagged = (kind: EdgeRun['kind'], toY: number): boolean =>
      described(line, { run: { kind }, isOutOfFocus: (_x, y) => y < toY }).outOfFocus;
    expect([flagged('soft', 24), flagged('soft', 32), flagged('soft', 44)]).toEqual([
      false,
      false,
      true,
    ]);
    expect(flagged('hard', side)).toBe(false);
    // One place in focus, though the next one is not.
    const isOutOfFocus = (_x: number, y: number): boolean => y < side / 2;
    const half = line.places.length / 2;
    for (const from of [half - 1, 2 * half - 1])
      expect(
        described(line, { run: { kind: 'soft', from, to: from + 1 }, isOutOfFocus }).outOfFocus,
      ).toBe((line.line.y[line.places[from] as number] as number) < side / 2);
  });
});

test('numbers are cut as toFixed cuts them, ties and signs too', () => {
  const random = seeded(8);
  const odd = [0, -0, 0.5, 1.005, 2.675, -1.45, 1e21, -1e-9, 0.00005, Number.NaN];
  for (const value of [...odd, ...Array.from({ length: 400 }, () => 400 * random() - 100)]) {
    for (const digits of [1, 2, 4, 5]) {
      expect(roundToDigits(value, digits)).toBe(Number(value.toFixed(digits)));
    }
  }
  for (let n = 0; n < 100; n++) expect(roundToDigits(n / 8, 2)).toBe(Number((n / 8).toFixed(2)));
});

test('a few numbers are sorted as the long way does it, the rest left alone', () => {
  const random = seeded(9);
  for (let count = 0; count < 33; count++) {
    const values = Float64Array.from({ length: 40 }, () => Math.floor(9 * random()) - 4.5);
    const wanted = [...values.slice(0, count).sort(), ...values.slice(count)];
    insertionSort(values, count);
    expect([...values]).toEqual(wanted);
  }
});

/** Runs of kinds given by their first letters, every sample 10 px long: 'h3' for three hard ones. */
function runsOf(kinds: string, leastPx: number, closed = false): string {
  const named: Record<string, EdgeKind> = { h: 'hard', s: 'soft', f: 'found', l: 'lost' };
  const samples = [...kinds].map((letter) => named[letter] as EdgeKind);
  const lengths = new Float32Array(samples.length).fill(10);
  return edgeRuns(samples, lengths, closed, leastPx)
    .map(({ kind, from, to, lengthPx }) => {
      expect(lengthPx).toBe(10 * (to - from));
      return `${kind} ${from}-${to}`;
    })
    .join(', ');
}

describe('stretches of one kind along a contour', () => {
  test('follow one another from end to end', () => {
    expect(runsOf('hhhsslll', 0)).toBe('hard 0-3, soft 3-5, lost 5-8');
    expect(runsOf('hhhh', 0)).toBe('hard 0-4');
  });

  test('in a closed one, what lies across its first place is one stretch', () => {
    expect(runsOf('hhsssh', 0, true)).toBe('soft 2-5, hard 5-8');
    expect(runsOf('hhsssh', 0)).toBe('hard 0-2, soft 2-5, hard 5-6');
    expect(runsOf('hhsss', 0, true)).toBe('hard 0-2, soft 2-5');
    expect(runsOf('hhhhh', 0, true)).toBe('hard 0-5');
  });

  test('a short one goes to its longer neighbour', () => {
    expect(runsOf('hhhslllll', 20)).toBe('hard 0-3, lost 3-9');
    expect(runsOf('hhhhhslll', 20)).toBe('hard 0-6, lost 6-9');
    // The one before of two as long.
    expect(runsOf('hhhslll', 20)).toBe('hard 0-4, lost 4-7');
    expect(runsOf('shhh', 20)).toBe('hard 0-4');
    expect(runsOf('hhhs', 20)).toBe('hard 0-4');
  });

  test('between two of a kind it makes them one', () => {
    expect(runsOf('hhhshhll', 20)).toBe('hard 0-6, lost 6-8');
    expect(runsOf('sssshhhlhhhssss', 20)).toBe('soft 0-4, hard 4-11, soft 11-15');
  });

  test('the shortest goes first, and as long as the least is long enough', () => {
    expect(runsOf('hhhsslfffff', 30)).toBe('hard 0-3, found 3-11');
    expect(runsOf('hhss', 20)).toBe('hard 0-2, soft 2-4');
    expect(runsOf('h', 20)).toBe('hard 0-1');
  });
});

test('a closed contour that begins in the middle of a run has it in one piece', () => {
  const runs = edgeRuns(['hard', 'soft', 'soft', 'hard'], Float32Array.of(1, 2, 4, 8), true, 0.5);
  expect(runs.map(({ kind, lengthPx }) => [kind, lengthPx])).toEqual([
    ['soft', 6],
    ['hard', 9],
  ]);
});

test('of two runs as short as each other the first is given away first', () => {
  const kinds: EdgeKind[] = ['hard', 'hard', 'hard', 'soft', 'lost', 'found', 'found', 'found'];
  const runs = edgeRuns(kinds, new Float32Array(kinds.length).fill(1), false, 2);
  // The soft one to the hard; then the lost one lies between four and three, and goes there too.
  expect(runs.map(({ kind, lengthPx }) => [kind, lengthPx])).toEqual([
    ['hard', 5],
    ['found', 3],
  ]);
});
