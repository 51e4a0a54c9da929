import { expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { wholeThing } from '../../../../../app/core/reading/subject/whole-thing.ts';

// Pictures and limits are (own): made up so that one rule decides.
const grid = { width: 120, height: 90 };
type Place = readonly [x: number, y: number];

const within = ([x, y]: Place, [cx, cy]: Place, radius: number): boolean =>
  Math.hypot(x - cx, y - cy) < radius;

/** What is found where `isThing` is pale, all else dark, and the eye is drawn to `to`. */
function found(isThing: (at: Place) => boolean, to: Place): Uint8Array | null {
  const places = Array.from(
    { length: grid.width * grid.height },
    (_, i): Place => [i % grid.width, Math.floor(i / grid.width)],
  );
  const plane = (value: (at: Place) => number) => Float32Array.from(places, value);
  const lightness = plane((at) => (isThing(at) ? 75 : 30) + ((at[0] + at[1]) % 2));
  const drawn = plane(([x, y]) => Math.exp(-((x - to[0]) ** 2 + (y - to[1]) ** 2) / 300));
  return runToEnd(
    wholeThing({ grid, drawn, colours: [lightness, plane(() => 0), plane(() => 0)] }),
  );
}

const left: Place = [40, 45];
const right: Place = [90, 45];
const holds = (mask: Uint8Array | null, [x, y]: Place): boolean => mask?.[y * grid.width + x] === 1;

test('all of a thing of which only an edge draws the eye, with the dark in its middle', () => {
  const ring = (at: Place): boolean => within(at, left, 22) && !within(at, left, 6);
  const mask = found(ring, [55, 45]);
  const truth = Array.from({ length: grid.width * grid.height }, (_, i) =>
    within([i % grid.width, Math.floor(i / grid.width)], left, 22) ? 1 : 0,
  );
  const both = truth.filter((own, i) => own === 1 && mask?.[i] === 1).length;
  const either = truth.filter((own, i) => own === 1 || mask?.[i] === 1).length;
  expect(both / either).toBeGreaterThan(0.95);
});

test('not what hangs on it by a narrow neck', () => {
  const neck = ([x, y]: Place): boolean => x > 40 && x < 90 && Math.abs(y - 45) < 2;
  const two = (at: Place): boolean => within(at, left, 18) || within(at, right, 18) || neck(at);
  const mask = found(two, left);
  expect([holds(mask, left), holds(mask, [45, 55]), holds(mask, right)]).toEqual([
    true,
    true,
    false,
  ]);
});

test('none where all is alike, and none where nothing draws the eye', () => {
  expect(found(() => false, left)?.includes(1) ?? false).toBe(false);
  const nothing = new Float32Array(grid.width * grid.height);
  const colours = [nothing, nothing, nothing];
  expect(runToEnd(wholeThing({ grid, drawn: nothing, colours }))).toBeNull();
});
