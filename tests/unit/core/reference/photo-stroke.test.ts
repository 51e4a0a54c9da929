import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import { lastDecision } from '../../../../app/core/decisions/standing-decisions.ts';
import { subjectStrokes } from '../../../../app/core/decisions/subject-strokes.ts';
import { readingWishes } from '../../../../app/core/decisions/wishes.ts';
import {
  areSoundStrokes,
  longSideShare,
  placeInCut,
  placeOnPhoto,
  pointInCut,
  pointInPhoto,
  strokeInCut,
  strokeOnPhoto,
  thinStroke,
} from '../../../../app/core/reference/photo-stroke.ts';
import { centredCrop, cutOutOf } from '../../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';

const photo = { width: 4000, height: 3000 };
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('places of photo and cut-out', () => {
  // The oracle is the matrix the photo is cut by.
  test('agree with the cut itself, at any turn', () => {
    fc.assert(
      fc.property(share, share, fc.integer({ min: 0, max: 359 }), (x, y, turn) => {
        const crop = centredCrop(photo, sheetOf('quarter', 'across'), turn);
        const { width, height, matrix } = cutOutOf(photo, crop);
        const [a, b, c, d, e, f] = matrix;
        const [px, py] = [x * photo.width, y * photo.height];
        const [u, v] = pointInCut([x, y], crop, width / height);
        expect(Math.abs(u * width - (a * px + c * py + e))).toBeLessThan(2);
        expect(Math.abs(v * height - (b * px + d * py + f))).toBeLessThan(2);
      }),
    );
  });

  test('there and back again', () => {
    fc.assert(
      fc.property(share, share, fc.integer({ min: 0, max: 359 }), (x, y, turn) => {
        const crop = centredCrop(photo, sheetOf('a4', 'upright'), turn);
        const shape = 210 / 297;
        const [u, v] = pointInPhoto(pointInCut([x, y], crop, shape), crop, shape);
        expect(u).toBeCloseTo(x, 9);
        expect(v).toBeCloseTo(y, 9);
      }),
    );
  });

  test('a stroke goes to the photo and back by the shape of its sheet, at any turn', () => {
    const sheets = [sheetOf('quarter', 'across'), sheetOf('a4', 'upright')];
    for (const sheet of sheets) {
      for (const turn of [0, 7, 90, 200]) {
        const crop = centredCrop(photo, sheet, turn);
        const { width, height, matrix } = cutOutOf(photo, crop);
        const [a, b, c, d, e, f] = matrix;
        const cut = { sheet, crop };
        const path: Point[] = [
          [0.3, 0.4],
          [0.55, 0.45],
          [0.7, 0.62],
        ];
        const within = strokeInCut(cut, { stroke: path, brush: 0.1 });
        for (const [n, [x, y]] of path.entries()) {
          const [px, py] = [x * photo.width, y * photo.height];
          const [u, v] = within.path[n] as Point;
          expect(Math.abs(u * width - (a * px + c * py + e))).toBeLessThan(2);
          expect(Math.abs(v * height - (b * px + d * py + f))).toBeLessThan(2);
          expect(placeInCut(cut, [x, y])).toEqual([u, v]);
        }
        // A brush of a tenth of the photo's long side, 400 px, as a share of the cut's.
        const scale = Math.hypot(a, b);
        expect(within.brush).toBeCloseTo((400 * scale) / Math.max(width, height), 3);
        const back = strokeOnPhoto(cut, within);
        expect(back.brush).toBeCloseTo(0.1, 9);
        for (const [n, point] of path.entries()) {
          expect(back.stroke[n]?.[0]).toBeCloseTo(point[0], 3);
          expect(back.stroke[n]?.[1]).toBeCloseTo(point[1], 3);
          expect(placeOnPhoto(cut, within.path[n] as Point)).toEqual(back.stroke[n]);
        }
      }
    }
  });

  test('the whole photo is as long as itself, half of it half as long', () => {
    const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
    expect(longSideShare(whole, 4 / 3)).toBeCloseTo(1, 9);
    expect(longSideShare({ ...whole, size: [0.5, 0.5] }, 4 / 3)).toBeCloseTo(0.5, 9);
    expect(longSideShare({ ...whole, size: [0.25, 0.5] }, 2 / 3)).toBeCloseTo(0.375, 9);
  });
});

const ring: Point[] = [
  [0.3, 0.3],
  [0.6, 0.3],
  [0.6, 0.6],
];
let made = 0;
const drawn = (mode: 'circle' | 'add' | 'take', stroke: Point[] = ring): Decision => ({
  kind: 'subject',
  mode,
  stroke,
  brush: mode === 'circle' ? 0 : 0.04,
  id: `d${++made}`,
  at: made,
});
const undo = (of: Decision): Decision => ({ kind: 'undo', undoes: of.id, id: `u${++made}`, at: 1 });

const sheet = sheetOf('quarter', 'across');
const reference = { sheet, crop: centredCrop(photo, sheet) };
const modes = (...decisions: Decision[]): string[] =>
  subjectStrokes(decisions, reference).map(({ mode }) => mode);

describe('her strokes', () => {
  test('a new circle starts anew; what is taken back does not count', () => {
    const [one, add, take, two] = [drawn('circle'), drawn('add'), drawn('take'), drawn('circle')];
    expect(modes(one, add, take)).toEqual(['circle', 'add', 'take']);
    expect(modes(one, add, undo(add), take)).toEqual(['circle', 'take']);
    expect(modes(one, add, two)).toEqual(['circle']);
    expect(modes(one, add, two, undo(two))).toEqual(['circle', 'add']);
  });

  test('a correction without a circle, or after starting again, is no subject', () => {
    expect(modes(drawn('add'))).toEqual([]);
    const again = drawn('circle', []);
    expect(modes(drawn('circle'), again)).toEqual([]);
    expect(modes(drawn('circle'), again, undo(again))).toEqual(['circle']);
    expect(lastDecision([drawn('circle'), again], 'subject')).toBe(again);
  });

  test('go into the wishes, and stay on the same places of the photo on another sheet', () => {
    const decisions = [drawn('circle')];
    expect(readingWishes([], reference)).toEqual({});
    const wide = readingWishes(decisions, reference).subject?.[0]?.path[0];
    const other = sheetOf('a4', 'upright');
    const tall = { sheet: other, crop: centredCrop(photo, other) };
    const narrow = readingWishes(decisions, tall).subject?.[0]?.path[0];
    expect(narrow).not.toEqual(wide);
    const back = (place: Point, { crop, sheet: { widthMm, heightMm } }: typeof tall): Point =>
      pointInPhoto(place, crop, widthMm / heightMm);
    for (const [place, on] of [
      [wide, reference],
      [narrow, tall],
    ] as const) {
      const [x, y] = back(place as Point, on);
      expect([x.toFixed(6), y.toFixed(6)]).toEqual(['0.300000', '0.300000']);
    }
  });

  test('a brush keeps its width on the photo', () => {
    const [, add] = subjectStrokes([drawn('circle'), drawn('add')], {
      sheet,
      crop: { centre: [0.5, 0.5], size: [0.5, 0.5], turn: 0 },
    });
    expect(add?.brush).toBeCloseTo(0.08, 2);
  });
});

test('a thinned stroke keeps its ends and its way', () => {
  const long = Array.from({ length: 2000 }, (_, i): Point => [i / 2000, 0.5 + i / 9999]);
  const thin = thinStroke(long);
  expect(thin.length).toBeLessThan(260);
  expect(thin[0]).toEqual([0, 0.5]);
  expect(thin.at(-1)?.[0]).toBeCloseTo(0.9995, 4);
  expect(thinStroke([[0.123456, 0.5]])).toEqual([[0.1235, 0.5]]);
  expect(thinStroke([])).toEqual([]);
});

test('strokes that can be painted: 500 at most, brushes of up to twice the long side, finite places', () => {
  const stroke = { path: [[0.5, 0.5]] as Point[], brush: 0.1 };
  const many = (count: number) => areSoundStrokes(new Array(count).fill(stroke));
  expect([0, 1, 500, 501].map(many)).toEqual([true, true, true, false]);
  const withBrush = (brush: number) => areSoundStrokes([stroke, { ...stroke, brush }]);
  expect([0, 2, -0.001, 2.001, Number.NaN].map(withBrush)).toEqual([
    true,
    true,
    false,
    false,
    false,
  ]);
  const through = (...path: Point[]) => areSoundStrokes([stroke, { path, brush: 0 }]);
  expect(through([-3, 7])).toBe(true); // may run out of the picture
  expect(through([0, 0], [0, Number.NaN])).toBe(false);
  expect(through([Number.POSITIVE_INFINITY, 0])).toBe(false);
});
