import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { traceContours } from '../../../../app/core/raster/trace-contours.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const trace = (...rows: string[]) => {
  const size = { width: rows[0]?.length ?? 0, height: rows.length };
  return runToEnd(traceContours(Uint8Array.from(rows.join(''), Number), size)).map(
    ({ a, b, closed, corners }) => ({ a, b, closed, corners: [...corners] }),
  );
};

describe('a contour between two slots', () => {
  test('runs from border to border with the higher slot on its right', () => {
    expect(trace('11', '22')).toEqual([{ a: 1, b: 2, closed: false, corners: [0, 1, 1, 1, 2, 1] }]);
    expect(trace('22', '11')).toEqual([{ a: 1, b: 2, closed: false, corners: [2, 1, 1, 1, 0, 1] }]);
    expect(trace('12', '12')).toEqual([{ a: 1, b: 2, closed: false, corners: [1, 2, 1, 1, 1, 0] }]);
    expect(trace('21', '21')).toEqual([{ a: 1, b: 2, closed: false, corners: [1, 0, 1, 1, 1, 2] }]);
  });

  test('is closed round an island, and its first corner stands there once', () => {
    expect(trace('111', '121', '111')).toEqual([
      { a: 1, b: 2, closed: true, corners: [1, 1, 2, 1, 2, 2, 1, 2] },
    ]);
    expect(trace('222', '212', '222')).toEqual([
      { a: 1, b: 2, closed: true, corners: [2, 1, 1, 1, 1, 2, 2, 2] },
    ]);
  });

  test('ends where a third slot begins', () => {
    expect(trace('12', '33')).toEqual([
      { a: 1, b: 2, closed: false, corners: [1, 1, 1, 0] },
      { a: 1, b: 3, closed: false, corners: [0, 1, 1, 1] },
      { a: 2, b: 3, closed: false, corners: [1, 1, 2, 1] },
    ]);
  });

  test('turns round the higher slot where two meet crosswise', () => {
    expect(trace('1111', '1211', '1121', '1111').map(({ corners }) => corners)).toEqual([
      [1, 1, 2, 1, 2, 2, 1, 2],
      [2, 2, 3, 2, 3, 3, 2, 3],
    ]);
    expect(trace('2222', '2122', '2212', '2222')).toHaveLength(1);
  });
});

test.each([2, 3, 5])(
  '%d slots at random: every side is walked once, in its own contour',
  (slots) => {
    const random = seeded(slots);
    const [width, height] = [41, 27];
    const map = Uint8Array.from({ length: width * height }, () => Math.floor(slots * random()));
    const slotAt = (x: number, y: number) => map[Math.floor(y) * width + Math.floor(x)];
    const walked: string[] = [];
    for (const { a, b, closed, corners } of runToEnd(traceContours(map, { width, height }))) {
      expect(a).toBeLessThan(b);
      const round = closed ? [...corners, ...corners.subarray(0, 2)] : [...corners];
      for (let i = 2; i < round.length; i += 2) {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = round.slice(i - 2, i + 2);
        const [dx, dy] = [x1 - x0, y1 - y0];
        expect(Math.abs(dx) + Math.abs(dy)).toBe(1);
        const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
        expect(slotAt(x - dy / 2, y + dx / 2)).toBe(b);
        expect(slotAt(x + dy / 2, y - dx / 2)).toBe(a);
        walked.push(`${x} ${y}`);
      }
    }
    let sides = 0;
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        if (x > 0 && slotAt(x, y) !== slotAt(x - 1, y)) sides++;
        if (y > 0 && slotAt(x, y) !== slotAt(x, y - 1)) sides++;
      }
    }
    expect(walked).toHaveLength(sides);
    expect(new Set(walked).size).toBe(sides);
  },
);
