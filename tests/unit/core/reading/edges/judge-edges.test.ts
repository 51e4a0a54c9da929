import { describe, expect, test } from 'vitest';
import type { MeasuredContour } from '../../../../../app/core/reading/edges/edge-profile.ts';
import {
  classifyAlong,
  classifyEdge,
  findOutOfFocus,
  measureCameraBlur,
  subtractBlur,
} from '../../../../../app/core/reading/edges/judge-edges.ts';

// Contours given by hand, one sample a px; limits between the kinds are the file's own (own).
function contourOf(
  samples: readonly (readonly [contrast: number, sigma: number])[],
  at: (n: number) => readonly [x: number, y: number] = (n) => [n, 0],
): MeasuredContour {
  const count = samples.length;
  const places = Int32Array.from({ length: count }, (_, n) => n);
  return {
    line: {
      x: Float32Array.from(places, (n) => at(n)[0]),
      y: Float32Array.from(places, (n) => at(n)[1]),
      closed: false,
    },
    places,
    contrasts: Float32Array.from(samples, ([contrast]) => contrast),
    sigmas: Float32Array.from(samples, ([, sigma]) => sigma),
    lengths: new Float32Array(count).fill(1),
  } as unknown as MeasuredContour;
}
const times = <T>(count: number, one: T): T[] => Array.from({ length: count }, () => one);

describe('the blur of the camera', () => {
  test('is that of the sharpest tenth of the strong edges', () => {
    const rising = Array.from({ length: 100 }, (_, n) => [30, 0.2 + n / 100] as const);
    expect(measureCameraBlur([contourOf(rising.toReversed())])).toBeCloseTo(0.3, 5);
    // Of two contours together.
    const parts = [contourOf(rising.slice(0, 50)), contourOf(rising.slice(50))];
    expect(measureCameraBlur(parts)).toBeCloseTo(0.3, 5);
  });

  test('weak edges, under 15 L*, say nothing of it; without a strong one it is none', () => {
    expect(
      measureCameraBlur([contourOf([...times(50, [14.9, 0.1] as const), [15, 0.8]])]),
    ).toBeCloseTo(0.8, 5);
    expect(measureCameraBlur([contourOf(times(50, [14.9, 0.9] as const))])).toBe(0);
    expect(measureCameraBlur([])).toBe(0);
  });

  test('is held to 1.5 px: a photo soft throughout is soft', () => {
    expect(measureCameraBlur([contourOf(times(20, [30, 4] as const))])).toBe(1.5);
  });

  test('is taken out of a measured one by squares, down to nothing', () => {
    expect(subtractBlur(5, 3)).toBeCloseTo(4, 10);
    expect(subtractBlur(2, 2)).toBe(0);
    expect(subtractBlur(1, 2)).toBe(0);
  });
});

describe('the kind of an edge', () => {
  test('is lost under 4 L*, found under 10, hard from there, soft from 0.6 % of the long side on', () => {
    expect(classifyEdge(3.9, 0)).toBe('lost');
    expect(classifyEdge(4, 0)).toBe('found');
    expect(classifyEdge(9.9, 0.006)).toBe('found');
    expect(classifyEdge(10, 0.006)).toBe('hard');
    expect(classifyEdge(10, 0.0061)).toBe('soft');
    expect(classifyEdge(5, 0.0061)).toBe('soft');
  });

  test('is lost where it rises by less than an L* for each per cent of the long side', () => {
    // A blurred step rises steepest at its middle: contrast over sigma times the root of 2 pi; 10 to 90 % are 2.563
    // sigma (the normal distribution; Abramowitz and Stegun 1964, table 26.1).
    const width = 0.2;
    const steepest = (contrast: number): number =>
      (contrast / Math.sqrt(2 * Math.PI) / (width / 2.5631)) * 0.01;
    expect(steepest(20)).toBeGreaterThan(1);
    expect(classifyEdge(20, width)).toBe('soft');
    expect(steepest(19)).toBeLessThan(1);
    expect(classifyEdge(19, width)).toBe('lost');
  });

  test('along a contour single strays change nothing, and the camera’s blur is taken off', () => {
    const stray = times(21, [30, 1] as const).map((own, n) => (n === 10 ? ([1, 9] as const) : own));
    expect(new Set(classifyAlong(contourOf(stray), 0, 1000))).toEqual(new Set(['hard']));
    // 10 to 90 % of a sigma of 2.5 px are 6.4 of 1000 px; 2 px of it are the camera's.
    const soft = contourOf(times(21, [30, 2.5] as const));
    expect(new Set(classifyAlong(soft, 0, 1000))).toEqual(new Set(['soft']));
    expect(new Set(classifyAlong(soft, 2, 1000))).toEqual(new Set(['hard']));
  });
});

describe('parts of the picture out of focus', () => {
  // Fields of 10 px: a twelfth of the long side.
  const size = { width: 120, height: 60 };
  const inField =
    (column: number, row: number) =>
    (n: number): readonly [number, number] => [10 * column + (n % 10), 10 * row + 5];
  const isBlurred = (contours: readonly MeasuredContour[], blurPx = 1) =>
    findOutOfFocus(contours, size, blurPx);

  test('are fields where over half of the seen edges are twice as wide as the camera’s blur', () => {
    const mixed = (soft: number) =>
      isBlurred([
        contourOf(
          [...times(soft, [20, 2.1] as const), ...times(20 - soft, [20, 1.9] as const)],
          inField(7, 3),
        ),
      ])(75, 35);
    expect(mixed(11)).toBe(true);
    expect(mixed(10)).toBe(false);
    expect(isBlurred([contourOf(times(20, [20, 2] as const), inField(7, 3))])(75, 35)).toBe(false);
    // No camera is sharper than 0.75 px.
    expect(isBlurred([contourOf(times(20, [20, 1.45] as const), inField(7, 3))], 0)(75, 35)).toBe(
      false,
    );
    expect(isBlurred([contourOf(times(20, [20, 1.55] as const), inField(7, 3))], 0)(75, 35)).toBe(
      true,
    );
  });

  test('and no field beside them, in any direction, up to the corners', () => {
    const fields: readonly (readonly [number, number])[] = [
      [7, 3],
      [0, 0],
      [11, 5],
      [11, 3],
    ];
    for (const [column, row] of fields) {
      const find = isBlurred([contourOf(times(20, [20, 3] as const), inField(column, row))]);
      const found = Array.from({ length: 72 }, (_, n) => n).filter((n) =>
        find(10 * (n % 12) + 5, 10 * Math.floor(n / 12) + 5),
      );
      expect(found).toEqual([12 * row + column]);
      // The far borders belong to the last fields.
      expect(find(120, 35)).toBe(row === 3 && column === 11);
    }
  });

  test('fields with less edge than they are wide, or with none that can be seen, are none', () => {
    expect(isBlurred([contourOf(times(9, [20, 3] as const), inField(7, 3))])(75, 35)).toBe(false);
    expect(isBlurred([contourOf(times(10, [20, 3] as const), inField(7, 3))])(75, 35)).toBe(true);
    expect(isBlurred([contourOf(times(20, [3.9, 3] as const), inField(7, 3))])(75, 35)).toBe(false);
    expect(isBlurred([])(75, 35)).toBe(false);
  });
});
