import { expect, test } from 'vitest';
import { brushPointMm, smallShapeMm } from '../../../../../app/core/limits.ts';
import { chooseWhiteWay, isTedious } from '../../../../../app/core/reading/whites/whites.ts';
import { whiteWhyInWords } from '../../../../../app/core/words/reading/whites.ts';

// Ways by the trade's practice (common practice, no source): sparkles last, masks only in wet washes.
test.each([
  [0.6, 0, false, 1, 'last', /paint over it/],
  [0.6, 0, true, 40, 'last', /brings it back/],
  [2, 0, false, 40, 'round', /tip of the brush/],
  [2, 0, true, 1, 'mask', /2 mm across/],
  [7, 0, true, 3, 'round', /wet around/],
  [7, 0, true, 9, 'mask', /One of 9/],
  [40, 0, true, 9, 'round', /1–2 mm/],
  [40, 0, false, 0, 'round', /Paint round it on dry paper/],
  [40, 0.8, false, 0, 'round', /damp brush/],
  // On either side of each limit: a brush's point, a small shape, tedious ones, mostly soft.
  [brushPointMm - 0.01, 0, true, 1, 'last', /paint over it/],
  [brushPointMm, 0, true, 1, 'mask', /would drown/],
  [smallShapeMm - 0.01, 0, true, 1, 'mask', /would drown/],
  [smallShapeMm, 0, true, 1, 'round', /wet around/],
  [smallShapeMm - 0.01, 0, false, 1, 'round', /tip of the brush/],
  [smallShapeMm, 0, false, 1, 'round', /on dry paper/],
  [9.9, 0, true, 8, 'mask', /One of 8/],
  [9.9, 0, true, 7, 'round', /wet around/],
  [10, 0, true, 8, 'round', /wet around/],
  [40, 0.5, true, 0, 'round', /damp brush/],
  [40, 0.49, true, 0, 'round', /needed\.$/],
] as const)(
  '%d mm, soft %d, wet %s, %d alike: %s',
  (shortSideMm, softShare, wet, alike, way, why) => {
    const proposed = chooseWhiteWay({ shortSideMm, softShare }, { wet, alike });
    expect(proposed.way).toBe(way);
    const said = whiteWhyInWords(proposed.why);
    expect(said).toMatch(why);
    expect(said.length).toBeLessThan(140);
  },
);

test('tedious are those from a brush’s point to under 10 mm', () => {
  expect([brushPointMm - 0.01, brushPointMm, 9.9, 10].map(isTedious)).toEqual([
    false,
    true,
    true,
    false,
  ]);
});
