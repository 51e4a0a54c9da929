import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import {
  boundZoom,
  nearest,
  type PictureFrame,
  pan,
  pinch,
  placeUnder,
  wholePicture,
  zoomAbout,
  zoomByDoubleTap,
} from '../../../../app/ui/picture/picture-zoom.ts';

const stage: PictureFrame = { width: 400, height: 300, ratio: 2 }; // the picture is 400 x 200 in it
const closeTo = ([x, y]: Point, [a, b]: Point): void => {
  expect(x).toBeCloseTo(a, 9);
  expect(y).toBeCloseTo(b, 9);
};

test('the whole picture lies in the middle, unmoved', () => {
  closeTo(placeUnder(stage, wholePicture, [0, 50]), [0, 0]);
  closeTo(placeUnder(stage, wholePicture, [400, 250]), [1, 1]);
});

test('zooming about a point leaves what is under it', () => {
  const near = zoomAbout(stage, wholePicture, [100, 150], 4);
  expect(near.scale).toBe(4);
  closeTo(placeUnder(stage, near, [100, 150]), [0.25, 0.5]);
});

test('a pinch zooms about the middle of two fingers and takes it along', () => {
  const to = pinch(
    stage,
    wholePicture,
    [
      [150, 150],
      [250, 150],
    ],
    [
      [120, 160],
      [320, 160],
    ],
  );
  expect(to.scale).toBeCloseTo(2, 9);
  closeTo(placeUnder(stage, to, [220, 160]), [0.5, 0.5]);
});

test('double tap: in at the place, then back to the whole', () => {
  const near = zoomByDoubleTap(stage, wholePicture, [300, 150]);
  expect(near.scale).toBe(2.5);
  closeTo(placeUnder(stage, near, [300, 150]), [0.75, 0.5]);
  expect(zoomByDoubleTap(stage, near, [10, 10])).toEqual(wholePicture);
});

test('at the whole nothing can be moved', () => {
  expect(pan(stage, wholePicture, [90, -50])).toEqual(wholePicture);
});

test('a picture smaller than the frame on one side stays in its middle there', () => {
  const near = pan(stage, zoomAbout(stage, wholePicture, [200, 150], 1.4), [50, 50]);
  expect(near.centre[1]).toBe(0.5);
  expect(near.centre[0]).toBeLessThan(0.5);
});

describe('whatever is done', () => {
  const share = fc.double({ min: -3, max: 3, noNaN: true });
  const place = fc.tuple(share, share);
  const anyStage = fc.record({
    width: fc.integer({ min: 50, max: 2000 }),
    height: fc.integer({ min: 50, max: 2000 }),
    ratio: fc.double({ min: 0.2, max: 5, noNaN: true }),
  });
  const anyZoom = fc.record({
    scale: fc.double({ min: 0.01, max: 50, noNaN: true }),
    centre: place,
  });

  test('no edge of the picture comes into the frame while it is larger than the frame', () => {
    fc.assert(
      fc.property(anyStage, anyZoom, place, (on, asked, [x, y]) => {
        const zoom = pan(on, boundZoom(on, asked), [x * 500, y * 500]);
        expect(zoom.scale).toBeGreaterThanOrEqual(1);
        expect(zoom.scale).toBeLessThanOrEqual(nearest);
        const [left, top] = placeUnder(on, zoom, [0, 0]);
        const [right, bottom] = placeUnder(on, zoom, [on.width, on.height]);
        for (const [from, to] of [
          [left, right],
          [top, bottom],
        ] as const) {
          const all = from <= 1e-9 && to >= 1 - 1e-9;
          const inside = from >= -1e-9 && to <= 1 + 1e-9;
          expect(all || inside, `${from} ${to}`).toBe(true);
        }
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  test('bounding twice is bounding once', () => {
    fc.assert(
      fc.property(anyStage, anyZoom, (on, asked) => {
        const once = boundZoom(on, asked);
        expect(boundZoom(on, once)).toEqual(once);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});
