import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/model/lab.ts';
import { looksLighterBy, misleadingBy } from '../../../../app/model/looks-lighter-by.ts';

const ofHue = (lightness: number, chroma: number, degrees: number): Lab => {
  const angle = (degrees * Math.PI) / 180;
  return [lightness, chroma * Math.cos(angle), chroma * Math.sin(angle)];
};

// Fairchild, Pirrotta 1991, formula from memory; the figures were worked out by hand from it.
test.each([
  [45, 80, 30, 15.7],
  [30, 60, 280, 21.1],
  [50, 30, 60, 4.3],
  [90, 80, 90, 1.7],
])('L* %d, chroma %d, hue %d looks %f lighter', (lightness, chroma, hue, by) => {
  expect(looksLighterBy(ofHue(lightness, chroma, hue))).toBeCloseTo(by, 1);
});

test('she is told of strong reds, blues and violets, not of yellows, greens or greys', () => {
  expect(misleadingBy(ofHue(45, 80, 30))).toBeGreaterThan(15);
  expect(misleadingBy(ofHue(30, 60, 280))).toBeGreaterThan(15);
  expect(misleadingBy(ofHue(40, 50, 330))).not.toBeNull();
  expect(misleadingBy(ofHue(20, 80, 140))).toBeNull(); // looks lighter, but she is not misled often
  expect(misleadingBy(ofHue(45, 20, 20))).toBeNull(); // a dull red
  expect(misleadingBy([50, 0, 0])).toBeNull();
});
