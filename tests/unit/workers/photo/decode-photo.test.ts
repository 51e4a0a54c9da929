import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodedSize, largestAreaPx } from '../../../../workers/photo/decode-photo.ts';

test('a photo that fits keeps its size', () => {
  expect(decodedSize({ width: 4096, height: 4096 }, largestAreaPx)).toEqual({
    width: 4096,
    height: 4096,
  });
});

test('any larger one fits, keeps its shape and never vanishes', () => {
  const side = fc.integer({ min: 1, max: 65535 });
  fc.assert(
    fc.property(side, side, (width, height) => {
      const small = decodedSize({ width, height }, largestAreaPx);
      expect(small.width * small.height).toBeLessThanOrEqual(largestAreaPx);
      expect(Math.max(small.width, small.height)).toBeLessThanOrEqual(32767);
      expect(Math.min(small.width, small.height)).toBeGreaterThanOrEqual(1);
      if (Math.min(small.width, small.height) === 1) return; // a line has no shape to keep
      const scale = Math.max(small.width / width, small.height / height);
      expect(width * scale - small.width).toBeLessThanOrEqual(1 + 1e-6);
      expect(height * scale - small.height).toBeLessThanOrEqual(1 + 1e-6);
    }),
    { numRuns: 1000 },
  );
});

test('the 108-megapixel photo', () => {
  expect(decodedSize({ width: 12000, height: 9000 }, largestAreaPx)).toEqual({
    width: 4729,
    height: 3547,
  });
});
