import { expect, test } from 'vitest';
import { decidedEdges } from '../../../../app/core/decisions/decided-reading.ts';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import { nearestEdge, placeOnEdge } from '../../../../app/core/reading/edges/place-on-edge.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import { placeInCut, placeOnPhoto } from '../../../../app/core/reference/photo-stroke.ts';
import type { Reference } from '../../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';
import { painted, readFor } from '../../../support/reading/rasters.ts';

/** A dark disc at (0.4, 0.5) of a photo of 240 x 180 px, its right out of the light. */
const code = (x: number, y: number): number =>
  Math.hypot(x - 96, y - 90) < 42 ? 60 : x > 180 ? 235 : 170;

const whole: Pick<Reference, 'crop' | 'sheet'> = {
  crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
  sheet: sheetOf('quarter', 'across'),
};
/** Another cut of another size: 180 x 135 px from (18, 24) on. */
const tighter: Pick<Reference, 'crop' | 'sheet'> = {
  crop: { centre: [108 / 240, 91.5 / 180], size: [0.75, 0.75], turn: 0 },
  sheet: { format: 'own', widthMm: 200, heightMm: 150 },
};

const read = async (cut: typeof whole, width: number, height: number, left = 0, top = 0) => {
  const opened = painted(width, height, (x, y) => {
    const grey = code(x + left, y + top);
    return [grey, grey, grey];
  });
  return (await readFor(opened, {}, cut.sheet)).reading;
};

/** The edge of the disc's left side. */
const discEdge = (reading: Reading, cut: typeof whole): number => {
  const near = nearestEdge(
    reading.edges ?? [],
    placeInCut(cut, [54 / 240, 0.5]),
    reading.raster,
    0.02,
  );
  if (!near) throw new Error('the disc has no edge');
  return near.index;
};

test('decided once, found again in other values, on another sheet and in another cut', async () => {
  const first = await read(whole, 240, 180);
  const index = discEdge(first, whole);
  const place = placeOnEdge(
    first.edges ?? [],
    index,
    first.raster,
    placeInCut(whole, [54 / 240, 0.5]),
  );
  if (!place) throw new Error('nowhere');
  const decisions: readonly Decision[] = [
    { id: 'a', at: 0, kind: 'edge', place: placeOnPhoto(whole, place), wish: 'lose' },
  ];
  const lostOf = ({ borders }: Reading) => borders.reduce((sum, b) => sum + b.lost * b.lengthMm, 0);
  for (const [cut, reading] of [
    [whole, first],
    [
      whole,
      (
        await readFor(
          painted(240, 180, (x, y) => [code(x, y), code(x, y), code(x, y)]),
          { bands: 2 },
        )
      ).reading,
    ],
    [tighter, await read(tighter, 180, 135, 18, 24)],
  ] as const) {
    const decided = decidedEdges(reading, decisions, cut);
    const on = discEdge(reading, cut);
    expect(decided.edges?.map(({ wish }) => wish ?? '-').join('')).toBe(
      (reading.edges ?? []).map((_, i) => (i === on ? 'lose' : '-')).join(''),
    );
    const gained = lostOf(decided) - lostOf(reading);
    expect(gained).toBeCloseTo(reading.edges?.[on]?.lengthMm ?? 0, 1);
  }
});
