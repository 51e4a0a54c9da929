import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  frameTo,
  movedFrame,
  type PatchFrame,
  resizedFrame,
} from '../../../../../app/core/paint/measure/measured-photo.ts';

const frame: PatchFrame = { left: 0.2, top: 0.3, width: 0.1, height: 0.2 };

it('is moved, made larger about its middle, and drawn out by its corner', () => {
  expect(movedFrame(frame, 0.1, -0.1)).toEqual({ ...frame, left: 0.2 + 0.1, top: 0.3 - 0.1 });
  const larger = resizedFrame(frame, 2, 1);
  expect(larger.left).toBeCloseTo(0.15, 12);
  expect(larger.width).toBeCloseTo(0.2, 12);
  expect(larger.height).toBe(0.2);
  const out = frameTo(frame, [0.5, 0.9]);
  expect(out.width).toBeCloseTo(0.3, 12);
  expect(out.height).toBeCloseTo(0.6, 12);
});

it('stays inside the photo and can be taken hold of, whatever is done to it', () => {
  const number = fc.double({ min: -3, max: 3, noNaN: true });
  const move = fc.record({ kind: fc.constantFrom('move', 'size', 'corner'), a: number, b: number });
  fc.assert(
    fc.property(fc.array(move, { maxLength: 20 }), (moves) => {
      let now = frame;
      for (const { kind, a, b } of moves) {
        if (kind === 'move') now = movedFrame(now, a, b);
        else if (kind === 'size') now = resizedFrame(now, Math.abs(a), Math.abs(b));
        else now = frameTo(now, [a, b]);
        expect(Math.min(now.left, now.top)).toBeGreaterThanOrEqual(-1e-9);
        expect(now.left + now.width).toBeLessThanOrEqual(1 + 1e-9);
        expect(now.top + now.height).toBeLessThanOrEqual(1 + 1e-9);
        expect(Math.min(now.width, now.height)).toBeGreaterThan(0.019);
      }
    }),
    { seed: 12, numRuns: 200 },
  );
});
