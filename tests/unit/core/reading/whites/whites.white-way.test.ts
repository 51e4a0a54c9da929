import { expect, test } from 'vitest';
import { chooseWhiteWay } from '../../../../../app/core/reading/whites/whites.ts';

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
] as const)(
  '%d mm, soft %d, wet %s, %d alike: %s',
  (shortSideMm, softShare, wet, alike, way, why) => {
    const proposed = chooseWhiteWay({ shortSideMm, softShare }, { wet, alike });
    expect(proposed.way).toBe(way);
    expect(proposed.why).toMatch(why);
    expect(proposed.why.length).toBeLessThan(140);
  },
);
