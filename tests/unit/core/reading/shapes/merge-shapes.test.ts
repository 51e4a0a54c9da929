import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import {
  bandOfCell,
  CellTones,
  familyOfCell,
  groupOf,
  packCell,
  paperGroup,
} from '../../../../../app/core/reading/shapes/cells.ts';
import {
  type MergeSizes,
  mergeShapes,
  mergeSizes,
} from '../../../../../app/core/reading/shapes/merge-shapes.ts';

/** What a pixel is: band, family, passage, whether it stays paper; and its colour. */
interface Kind {
  readonly paper?: boolean;
  readonly band: number;
  readonly family: number;
  readonly passage?: number;
  readonly lab: readonly [number, number, number];
}
const [width, height] = [50, 40];

function merged(kindAt: (x: number, y: number) => Kind, sizes: Partial<MergeSizes> = {}) {
  const kinds = Array.from({ length: width * height }, (_, i) =>
    kindAt(i % width, Math.floor(i / width)),
  );
  const cells = Uint8Array.from(kinds, ({ band, family, passage = 0, paper }) =>
    packCell(paper ? paperGroup(passage) : groupOf(band, passage), family),
  );
  const bands = Uint8Array.from(kinds, ({ band }) => band);
  const plane = (n: 0 | 1 | 2) => Float32Array.from(kinds, ({ lab }) => lab[n]);
  const tones = new CellTones(cells, { lightness: plane(0), a: plane(1), b: plane(2) });
  const rule: MergeSizes = {
    shapePx: 0,
    accentPx: 0,
    subjectPx: 0,
    darkestBand: 7,
    ...sizes,
  };
  runToEnd(mergeShapes(cells, bands, { width, height }, tones, rule));
  // Both maps say the same of every pixel.
  expect(Array.from(cells, bandOfCell)).toEqual([...bands]);
  return (x: number, y: number): readonly [band: number, family: number] => [
    bands[y * width + x] as number,
    familyOfCell(cells[y * width + x] as number),
  ];
}
const inside = (
  x: number,
  y: number,
  left: number,
  top: number,
  wide: number,
  high: number,
): boolean => x >= left && x < left + wide && y >= top && y < top + high;

const light: Kind = { band: 2, family: 1, lab: [80, 0, 0] };
const dark: Kind = { band: 4, family: 1, lab: [30, 0, 0] };
const mid: Kind = { band: 3, family: 1, lab: [60, 0, 0] };
const half = (x: number): Kind => (x < 25 ? light : dark);

describe('a shape too small to paint', () => {
  const square =
    (kind: Kind, side = 5) =>
    (x: number, y: number): Kind =>
      inside(x, y, 23, 10, side, side) ? kind : half(x);

  test('goes to the neighbour nearest in value, whatever the border', () => {
    // 60 is 20 from the light and 30 from the dark, though three of its five columns lie in the dark half.
    expect(merged(square(mid), { shapePx: 26 })(26, 12)).toEqual([2, 1]);
    expect(merged(square({ ...mid, lab: [45, 0, 0] }), { shapePx: 26 })(23, 12)).toEqual([4, 1]);
  });

  test('stands from the smallest size on: 25 px', () => {
    expect(merged(square(mid), { shapePx: 25 })(26, 12)).toEqual([3, 1]);
  });

  test('of the darkest band, or of paper, stands as an accent', () => {
    const sizes = { shapePx: 100, accentPx: 25 };
    expect(merged(square(mid), { ...sizes, darkestBand: 3 })(26, 12)).toEqual([3, 1]);
    const sparkle: Kind = { band: 1, family: 1, paper: true, lab: [97, 0, 0] };
    expect(merged(square(sparkle), sizes)(26, 12)).toEqual([1, 1]);
    expect(merged(square({ ...sparkle, paper: false }), sizes)(26, 12)).toEqual([2, 1]);
    expect(merged(square(sparkle), { ...sizes, accentPx: 26 })(26, 12)).toEqual([2, 1]);
    expect(merged(square(mid), { ...sizes, accentPx: 26, darkestBand: 3 })(26, 12)).toEqual([2, 1]);
    expect(merged(square(mid), sizes)(26, 12)).toEqual([2, 1]);
  });

  test('never leaves its passage', () => {
    const subject = { ...mid, passage: 1 };
    const at = merged(square(subject), { shapePx: 26 });
    expect(at(26, 12)).toEqual([3, 1]);
    expect(at(0, 0)).toEqual([2, 1]);
  });

  test('of two within 4 L* goes where its border is longer', () => {
    // The halves are 80 and 30. From 55.5 they are 24.5 and 25.5, six steps of 4 L* both; from 57 six and seven.
    const even = (value: number) =>
      merged((x, y) => (inside(x, y, 23, 10, 5, 5) ? { ...mid, lab: [value, 0, 0] } : half(x)), {
        shapePx: 26,
      })(26, 12);
    expect(even(55.5)).toEqual([4, 1]); // three columns against two
    expect(even(57)).toEqual([2, 1]);
  });

  test('of another family within its band goes to the nearest in colour', () => {
    const families = [
      light,
      { ...light, family: 2, lab: [80, 20, 0] as const },
      { ...light, family: 3, lab: [80, 11, 0] as const },
    ];
    const at = merged(
      (x, y) => (inside(x, y, 23, 10, 5, 5) ? families[2] : families[x < 25 ? 0 : 1]) as Kind,
      { shapePx: 26 },
    );
    expect(at(24, 12)).toEqual([2, 2]); // 9 from the second, 11 from the first
  });
});

describe('her whites', () => {
  const white: Kind = { band: 0, family: 1, lab: [30, 0, 0] };

  test('stay, however small, and take in nothing', () => {
    const at = merged(
      (x, y) => (inside(x, y, 10, 10, 2, 2) ? white : inside(x, y, 12, 10, 2, 2) ? mid : half(x)),
      { shapePx: 26 },
    );
    expect(at(10, 10)).toEqual([0, 1]);
    expect(at(12, 10)).toEqual([2, 1]);
  });

  test('a shape with nothing but one of hers round it stands', () => {
    const at = merged(
      (x, y) => (inside(x, y, 11, 11, 3, 3) ? mid : inside(x, y, 10, 10, 5, 5) ? white : half(x)),
      { shapePx: 26 },
    );
    expect(at(12, 12)).toEqual([3, 1]);
  });
});

describe('a colour too scarce for a mix of its own', () => {
  // 0.4 % of 2000 px are 8.
  const other = (a: number): Kind => ({ ...light, family: 2, lab: [80, a, 0] });
  const few = (count: number, a: number) =>
    merged((x, y) => (y === 5 && x >= 5 && x < 5 + count ? other(a) : half(x)))(6, 5);

  test('is painted with the nearest of its band, from 8 px on by itself', () => {
    expect(few(7, 20)).toEqual([2, 1]);
    expect(few(8, 20)).toEqual([2, 2]);
  });

  test('unless it is over 25 from all others: an accent', () => {
    expect(few(7, 25)).toEqual([2, 1]);
    expect(few(7, 25.5)).toEqual([2, 2]);
  });

  test('the commonest of its band is never too scarce', () => {
    const at = merged((x, y) => (y === 5 && x >= 5 && x < 9 ? { ...mid, family: 2 } : half(x)));
    expect(at(6, 5)).toEqual([3, 2]);
  });

  test('nearest is by a* and b* alike', () => {
    const families: Kind[] = [
      light,
      { ...light, family: 3, lab: [80, 9, 9] },
      { ...light, family: 2, lab: [80, 8, 3] },
    ];
    const at = merged(
      (x, y) => (y === 5 && x >= 20 && x < 25 ? families[2] : families[x < 25 ? 0 : 1]) as Kind,
    );
    expect(at(21, 5)).toEqual([2, 3]); // 6.1 from (9, 9), 8.5 from (0, 0)
  });
});

test('smallest sizes are squares of their side; accents and whites at most 1 mm', () => {
  expect(mergeSizes(3, 2)).toEqual({ shapePx: 16, accentPx: 4, subjectPx: 4, darkestBand: 3 });
  expect(mergeSizes(3, 2, 5)).toMatchObject({ shapePx: 100, accentPx: 4, subjectPx: 25 });
  expect(mergeSizes(3, 2, 0.5)).toMatchObject({ shapePx: 1, accentPx: 1, subjectPx: 1 });
});
