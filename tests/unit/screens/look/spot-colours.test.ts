import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { meanColour, type Pixels } from '../../../../app/core/raster/squint.ts';
import type { Family } from '../../../../app/core/reading/reading.ts';
import {
  compareSpots,
  comparisonWords,
  looksLighterBy,
  misleadingBy,
  nearestFamily,
  spotColours,
} from '../../../../app/screens/look/spot-colours.ts';

function picture(
  width: number,
  height: number,
  rgb: (x: number, y: number) => readonly [number, number, number],
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) data.set(rgb(x, y), (y * width + x) * 4);
  return { data, width, height };
}

test('a fine black and white check is L* 76: light is averaged, not codes', () => {
  const check = picture(40, 40, (x, y) => ((x + y) % 2 ? [0, 0, 0] : [255, 255, 255]));
  expect(meanColour(check, 20, 20, 9)[0]).toBeGreaterThan(75);
  expect(meanColour(check, 20, 20, 9)[0]).toBeLessThan(77);
});

test('a disc holds its own pixels and no others', () => {
  const dot = picture(21, 21, (x, y) =>
    Math.hypot(x - 10, y - 10) <= 4 ? [255, 255, 255] : [0, 0, 0],
  );
  expect(meanColour(dot, 10.5, 10.5, 4)[0]).toBeCloseTo(100, 3);
  expect(meanColour(dot, 10.5, 10.5, 6)[0]).toBeLessThan(90);
  expect(meanColour(dot, 1, 1, 3)[0]).toBe(0);
});

test('at corners, beyond them and in a one-pixel picture there is still a colour', () => {
  const one = picture(1, 1, () => [119, 119, 119]);
  for (const [x, y] of [
    [0, 0],
    [-30, 5],
    [1, 1],
  ] as const)
    expect(meanColour(one, x, y, 3)[0]).toBeCloseTo(50, 0);
  expect(spotColours(one, [1, 0], 4.2).grid.flat().every(Number.isFinite)).toBe(true);
});

test('a spot stands in the middle of its neighbours, each on its own side', () => {
  const halves = picture(200, 100, (x) => (x < 100 ? [0, 0, 0] : [255, 255, 255]));
  const { lab, grid } = spotColours(halves, [0.52, 0.5], 4);
  expect(lab[0]).toBeCloseTo(100, 3);
  for (const row of [0, 3, 6]) {
    expect(grid[row]?.[0]).toBeCloseTo(0, 3);
    expect(grid[row + 2]?.[0]).toBeCloseTo(100, 3);
  }
  expect(grid[4]).toEqual(lab);
});

// Lab of named paints' middle tones, chosen by eye; what is tested is the direction. Common practice, no source.
const grey = (lightness: number): Lab => [lightness, 0, 0];
const rows: readonly (readonly [first: Lab, second: Lab, words: string])[] = [
  [grey(61.1), grey(40.7), '2 values darker'], // values 6 and 4, ASTM D1535
  [grey(40.7), grey(61.1), '2 values lighter'],
  [grey(50), grey(51), 'the same value'],
  [grey(51), grey(46), 'half a value darker'],
  [grey(51), grey(36), '1½ values darker'],
  [grey(51), grey(61.1), '1 value lighter'],
  [[61.1, -5, -30], [40.7, 20, 30], '2 values darker, warmer, stronger'],
  [[51, 20, 40], [51, 0, -20], 'the same value, cooler, duller'],
  [[51, 40, 60], [51, 10, 15], 'the same value, duller'], // the same orange, weaker
  [[51, 0.6, 0.6], [51, -0.6, -0.6], 'the same value'], // noise in a grey has no warmth
  [grey(51), [51, 0, -20], 'the same value, cooler, stronger'],
];

test.each(rows)('from %j to %j: %s', (first, second, words) => {
  expect(comparisonWords(compareSpots(first, second))).toBe(words);
});

test('looked at the other way round, everything is the opposite', () => {
  const [one, other]: [Lab, Lab] = [
    [30, 35, 20],
    [70, -10, -25],
  ];
  const there = compareSpots(one, other);
  const back = compareSpots(other, one);
  expect(back.valueSteps).toBe(-there.valueSteps);
  expect([there.warmth, back.warmth]).toEqual(['cooler', 'warmer']);
  expect([there.strength, back.strength]).toEqual(['duller', 'stronger']);
});

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

const families: Family[] = [
  { id: 1, lab: [60, 20, 40], share: 0.5, name: 'ochre' },
  { id: 2, lab: [40, -5, -30], share: 0.3, name: 'blue' },
  { id: 3, lab: [80, 0, 0], share: 0.2, name: 'grey' },
];

test('a spot belongs to the colour nearest in hue and strength, whatever its value', () => {
  expect(nearestFamily(families, [5, 18, 35])?.name).toBe('ochre');
  expect(nearestFamily(families, [60, -4, -24])?.name).toBe('blue');
  expect(nearestFamily(families, [10, 1, -2])?.name).toBe('grey');
  expect(nearestFamily([], [50, 0, 0])).toBeNull();
});

test('the same surface in deep shade is still the same colour', () => {
  const shaded = (lab: readonly [number, number, number], light: number) => {
    const factor = (light + 16) / (lab[0] + 16);
    return [light, lab[1] * factor, lab[2] * factor] as const;
  };
  for (const family of families)
    for (const light of [8, 20, 90])
      expect(nearestFamily(families, shaded(family.lab, light))).toBe(family);
});
