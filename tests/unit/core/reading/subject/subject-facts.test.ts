import { describe, expect, test } from 'vitest';
import type { SubjectPlanes } from '../../../../../app/core/reading/subject/subject-colours.ts';
import { subjectFacts } from '../../../../../app/core/reading/subject/subject-facts.ts';

const code = (lightness: number): number => Math.round(lightness * 2.55);

/** A picture of a subject: `isSubject` by px, and L* by px, the same simplified and plain. */
function factsOf(
  [width, height]: readonly [number, number],
  isSubject: (x: number, y: number) => boolean,
  lightnessAt: (x: number, y: number) => number,
  pxPerMm = 1,
  plainAt = lightnessAt,
) {
  const px = width * height;
  const by = <T>(of: (x: number, y: number) => T): T[] =>
    Array.from({ length: px }, (_, i) => of(i % width, Math.floor(i / width)));
  const planes: SubjectPlanes = {
    size: { width, height },
    lightness: Uint8ClampedArray.from(by((x, y) => code(lightnessAt(x, y)))),
    plain: Uint8ClampedArray.from(by((x, y) => code(plainAt(x, y)))),
    a: new Int8Array(px),
    b: new Int8Array(px),
  };
  const mask = Uint8Array.from(by((x, y) => (isSubject(x, y) ? 1 : 0)));
  return subjectFacts(planes, mask, pxPerMm);
}

const leftHalf = (x: number): boolean => x < 40;

// Limits and figures are (own): the docstrings of what is tested say why.
describe('the subject in the left half of a sheet of 80 x 60 mm', () => {
  test('20 L* darker all along: stands out everywhere, one stretch as long as the sheet is high', () => {
    const facts = factsOf([80, 60], leftHalf, (x) => (leftHalf(x) ? 40 : 60));
    expect(facts.share).toBe(0.5);
    expect(facts.meanLightness.subject).toBeCloseTo(40, 6);
    expect(facts.meanLightness.ground).toBeCloseTo(60, 6);
    expect([facts.standsOutShare, facts.lostShare]).toEqual([1, 0]);
    expect(facts.line).toHaveLength(1);
    expect(facts.line[0]?.contrast).toBeCloseTo(-20, 1);
    expect(facts.line[0]?.lengthMm).toBeGreaterThan(56);
    expect(facts.line[0]?.lengthMm).toBeLessThanOrEqual(60);
    for (const [x] of facts.line[0]?.path ?? []) expect(x).toBeCloseTo(0.5, 4);
  });

  test('lengths are those on the sheet: half as long at two px a mm', () => {
    const lengthAt = (pxPerMm: number): number =>
      factsOf([80, 60], leftHalf, (x) => (leftHalf(x) ? 40 : 60), pxPerMm).line[0]?.lengthMm ?? 0;
    expect(lengthAt(2)).toBeCloseTo(lengthAt(1) / 2, 1);
  });

  // Over the upper third as light as the ground, in the middle 6 lighter, below 20 darker.
  const ground = 50;
  const inThirds = (x: number, y: number): number =>
    !leftHalf(x) ? ground : y < 20 ? ground : y < 40 ? ground + 6 : ground - 20;

  test('a line lost, seen and plain by thirds is three stretches with their own contrasts', () => {
    const { line, standsOutShare, lostShare } = factsOf([80, 60], leftHalf, inThirds);
    const downwards = [...line].sort(
      (one, two) => (one.path[0]?.[1] ?? 0) - (two.path[0]?.[1] ?? 0),
    );
    expect(downwards.map(({ contrast }) => Math.round(contrast))).toEqual([0, 6, -20]);
    expect(standsOutShare).toBeGreaterThan(0.27);
    expect(standsOutShare).toBeLessThan(0.4);
    expect(lostShare).toBeGreaterThan(0.27);
    expect(lostShare).toBeLessThan(0.4);
    const lengths = line.map(({ lengthMm }) => lengthMm);
    for (const lengthMm of lengths) expect(Math.abs(lengthMm - 20)).toBeLessThan(4);
  });

  test('stretches hang together: each ends where the next begins', () => {
    const { line } = factsOf([80, 60], leftHalf, inThirds);
    for (let i = 1; i < line.length; i++) {
      expect(line[i]?.path[0]).toEqual(line[i - 1]?.path.at(-1));
    }
  });

  test('lighter and darker by as much are two stretches, though both stand out', () => {
    const { line, standsOutShare } = factsOf([80, 60], leftHalf, (x, y) =>
      !leftHalf(x) ? 50 : y < 30 ? 70 : 30,
    );
    expect(standsOutShare).toBe(1);
    expect(line.map(({ contrast }) => Math.sign(Math.round(contrast / 20))).sort()).toEqual([
      -1, 1,
    ]);
  });

  // 10 L* stand out, under 4 is lost: 102 - 76.5 codes are 10, and one code less is not.
  test.each([
    [10.2, 1, 0],
    [9.8, 0, 0],
    [4.3, 0, 0],
    [3.5, 0, 1],
  ])('%f L* apart: stands out %i, lost %i', (apart, standsOut, lost) => {
    const facts = factsOf([80, 60], leftHalf, (x) => (leftHalf(x) ? 40 + apart : 40));
    expect([facts.standsOutShare, facts.lostShare]).toEqual([standsOut, lost]);
  });

  test('contrast is of the unsimplified picture, the means are of the simplified one', () => {
    const facts = factsOf(
      [80, 60],
      leftHalf,
      (x) => (leftHalf(x) ? 40 : 60),
      1,
      (x) => (leftHalf(x) ? 40 : 52),
    );
    expect(facts.line[0]?.contrast).toBeCloseTo(-12, 0);
    expect(facts.meanLightness.ground).toBeCloseTo(60, 6);
  });

  test('a rim of two px along the line counts for nothing: the outer half of a side is looked at', () => {
    // A side is 1.5 % of the long side, two px at least; of 400 px it is 6, of which the outer 3 count.
    const rim = (x: number): number => (x < 198 ? 40 : x < 200 ? 90 : x < 202 ? 5 : 60);
    const facts = factsOf([400, 60], (x) => x < 200, rim);
    expect(facts.line).toHaveLength(1);
    expect(facts.line[0]?.contrast).toBeCloseTo(-20, 0);
  });
});

type Picture = readonly [
  name: string,
  at: (x: number, y: number) => readonly [across: number, along: number],
  size: readonly [number, number],
];

/** The same picture of 400 x 60 px seen from its four sides: `across` runs from the subject's side to the ground's. */
const fourWays: readonly Picture[] = [
  ['left', (x, y) => [x, y], [400, 60]],
  ['right', (x, y) => [399 - x, y], [400, 60]],
  ['top', (x, y) => [y, x], [60, 400]],
  ['bottom', (x, y) => [399 - y, x], [60, 400]],
];

describe.each(fourWays)('what a side is, the subject at the %s', (_, at, size) => {
  /** Contrasts of the stretches, in codes, from the code at each place across. */
  const codesOf = (isSubject: (across: number) => boolean, codeAt: (across: number) => number) =>
    factsOf(
      size,
      (x, y) => isSubject(at(x, y)[0]),
      (x, y) => codeAt(at(x, y)[0]) / 2.55,
    ).line.map(({ contrast }) => contrast * 2.55);

  test('six px deep, 1.5 % of 400, of which the outer three count and their median stands', () => {
    // Four codes a px: the subject's px 194, 195, 196 are 96, 100, 104, the ground's 203, 204, 205 are 132, 136, 140.
    const ramp = (across: number): number => Math.max(0, Math.min(255, 4 * (across - 170)));
    const found = codesOf((across) => across < 200, ramp);
    expect(found).toHaveLength(1);
    expect(found[0]).toBeCloseTo(100 - 136, 3);
  });

  test('as deep as it goes where the picture ends: of two px the outer one', () => {
    const strip = (across: number): number => (across === 0 ? 100 : across === 1 ? 140 : 60);
    const found = codesOf((across) => across < 2, strip);
    expect(found).toHaveLength(1);
    expect(found[0]).toBeCloseTo(100 - 60, 3);
  });

  test('not beyond what parts it from a next shape of the subject', () => {
    // Two stripes of 2 px with one of ground between; the line beside the ground sees px 199 and 200 alone.
    const isSubject = (across: number) => [196, 197, 199, 200].includes(across);
    const stripes = (across: number): number =>
      across === 199 ? 120 : across === 200 ? 220 : isSubject(across) ? 250 : 60;
    const found = codesOf(isSubject, stripes).map(Math.round);
    expect(found).toContain(120 - 60); // the far line: outer half of 200, 199
  });

  test('a stripe of one px is all there is of its side', () => {
    // The line left of px 195 sees that one alone, though two more of the subject come after a px of ground.
    const isSubject = (across: number) => [195, 197, 198].includes(across);
    const stripes = (across: number): number =>
      across === 195 ? 120 : isSubject(across) ? 220 : across === 196 ? 30 : 60;
    const found = codesOf(isSubject, stripes).map(Math.round);
    expect(found.sort((one, other) => one - other)).toEqual(
      [120 - 60, 120 - 30, 220 - 60, 220 - 30].sort((one, other) => one - other),
    );
  });

  test('ground on both sides: each end of the picture is an end', () => {
    const isSubject = (across: number) => across >= 2 && across < 398;
    const rims = (across: number): number =>
      across === 0 ? 40 : across === 1 ? 10 : across === 398 ? 20 : across === 399 ? 60 : 160;
    const found = codesOf(isSubject, rims).map(Math.round);
    expect(found.sort((one, other) => one - other)).toEqual([160 - 60, 160 - 40]);
  });
});

describe('a subject in the middle', () => {
  const isDisc = (x: number, y: number): boolean => Math.hypot(x - 59.5, y - 59.5) < 40;

  test('its line is closed and one stretch; its end is its beginning', () => {
    const { line, share } = factsOf([120, 120], isDisc, (x, y) => (isDisc(x, y) ? 75 : 50));
    expect(line).toHaveLength(1);
    const path = line[0]?.path ?? [];
    expect(path[0]).toEqual(path.at(-1));
    expect(line[0]?.contrast).toBeCloseTo(25, 0);
    // Round a circle of radius 40: 251 mm.
    expect(Math.abs((line[0]?.lengthMm ?? 0) / (80 * Math.PI) - 1)).toBeLessThan(0.04);
    expect(share).toBeCloseTo((Math.PI * 40 ** 2) / 120 ** 2, 2);
  });

  test('half lost and half plain: two stretches, wherever the line is taken up', () => {
    for (const isLost of [
      (x: number) => x < 60,
      (x: number) => x >= 60,
      (_: number, y: number) => y < 60,
      (_: number, y: number) => y >= 60,
    ]) {
      const { line, lostShare, standsOutShare } = factsOf([120, 120], isDisc, (x, y) =>
        isDisc(x, y) && !isLost(x, y) ? 75 : 50,
      );
      expect(line).toHaveLength(2);
      expect(Math.abs(lostShare - 0.5)).toBeLessThan(0.06);
      expect(lostShare + standsOutShare).toBeCloseTo(1, 6);
    }
  });

  test('a single place that differs does not cut the line', () => {
    // One notch of 3 px as light as the ground, at the right.
    const isNotch = (x: number, y: number): boolean => x > 80 && y >= 58 && y < 61;
    const { line } = factsOf([120, 120], isDisc, (x, y) =>
      isDisc(x, y) && !isNotch(x, y) ? 75 : 50,
    );
    expect(line).toHaveLength(1);
  });
});

test('a subject that is the whole picture has no line', () => {
  const facts = factsOf(
    [20, 10],
    (x, y) => x >= 0 && y >= 0,
    () => 50,
  );
  expect([facts.share, facts.line, facts.standsOutShare, facts.lostShare]).toEqual([1, [], 0, 0]);
});
