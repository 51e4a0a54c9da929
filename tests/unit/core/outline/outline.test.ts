import { describe, expect, test } from 'vitest';
import { type Outline, outlineOf } from '../../../../app/core/outline/outline.ts';
import { made, madeReading, mapOf, raster } from '../../../support/outline/made-study.ts';

const round = (x: number, y: number, cx: number, cy: number, r: number): boolean =>
  Math.hypot(x - cx, y - cy) < r;

// Ground 0 and thing 1 of other colours; 2 its shadow; 3 a white; 4 darkest accent.
const slots = [
  made({ target: [75, 0, 0] }),
  made({ family: 2, target: [60, 20, 0] }),
  made({ family: 2, band: 3, target: [40, 20, 0] }),
  made({ band: 1, target: [95, 0, 0], reserve: true }),
  made({ band: 4, target: [20, 0, 0] }),
];
const map = mapOf((x, y) => {
  if (round(x, y, 300, 80, 6)) return 3;
  if (round(x, y, 340, 220, 3)) return 4;
  if (round(x, y, 60, 240, 4)) return 2; // under the first wash's size, neither white nor accent
  if (!round(x, y, 150, 150, 80)) return 0;
  return x > 150 ? 2 : 1;
});
const reading = madeReading(map, slots);
const outline = outlineOf(reading, map);

const near = ({ lines }: Outline, x: number, y: number, within = 12) =>
  lines.filter(({ points }) => points.every((p) => Math.hypot(p[0] - x, p[1] - y) < within));

describe('the drawing of a round thing, its shadow, a white, an accent and a speck', () => {
  test('lies at true size within half a millimetre of the shape', () => {
    const outer = outline.lines.filter(({ role }) => role === 'outer');
    const rim = outer.flatMap(({ points }) => points).filter(([x]) => x < 250);
    expect(rim.length).toBeGreaterThan(20);
    for (const [x, y] of rim) expect(Math.abs(Math.hypot(x - 150, y - 150) - 80)).toBeLessThan(0.5);
  });

  test('has the line to its shadow as an inner one', () => {
    const inner = outline.lines.filter(({ role }) => role === 'inner');
    expect(inner).toHaveLength(1);
    for (const [x] of inner[0]?.points ?? []) expect(x).toBeCloseTo(150, 0);
  });

  test('has the white and the accent however small, and leaves out the speck', () => {
    expect(near(outline, 300, 80).map(({ role }) => role)).toEqual(['white']);
    expect(near(outline, 340, 220)).toHaveLength(1);
    expect(near(outline, 60, 240)).toEqual([]);
  });

  test('a speck between two shapes leaves their border whole', () => {
    const on = mapOf((x, y) => (round(x, y, 200, 150, 4) ? 2 : x < 200 ? 0 : 1));
    const { lines } = outlineOf(madeReading(on, slots), on);
    const spans = lines.map(({ points }) => points.map(([, y]) => y).sort((p, q) => p - q));
    let reached = 0;
    for (const span of spans.sort((p, q) => (p[0] as number) - (q[0] as number))) {
      expect((span[0] as number) - reached).toBeLessThan(1.5);
      reached = Math.max(reached, span.at(-1) as number);
    }
    expect(reached).toBeGreaterThan(298);
    expect(near({ ...outline, lines }, 200, 150, 9)).toHaveLength(1); // one half of its rim, not both
  });

  test('a narrow strip is not drawn by two lines', () => {
    const strip = mapOf((x) => (x < 200 ? 0 : x < 202 ? 1 : 2));
    expect(outlineOf(madeReading(strip, slots), strip).lines).toHaveLength(1);
  });

  test('a white she will bring back at the end is not drawn', () => {
    const white = { slot: 3, areaMm2: 113, shortSideMm: 10, softShare: 0, byHand: false, why: '' };
    const at = [300 / 400, 80 / 300] as const;
    for (const way of ['round', 'mask'] as const)
      expect(
        near(outlineOf({ ...reading, whites: [{ ...white, at, way }] }, map), 300, 80),
      ).toHaveLength(1);
    const last = outlineOf({ ...reading, whites: [{ ...white, at, way: 'last' }] }, map);
    expect(near(last, 300, 80)).toEqual([]);
  });
});

describe('kinds of edges', () => {
  const drawn = (over: Parameters<typeof madeReading>[2]) =>
    outlineOf(madeReading(map, slots, over), map);

  test('soft edges are dotted, lost ones left out, found ones thin: by kind', () => {
    expect(new Set(drawn(() => ({ kind: 'soft' })).lines.map(({ kind }) => kind))).toEqual(
      new Set(['soft']),
    );
    expect(new Set(drawn(() => ({ kind: 'found' })).lines.map(({ kind }) => kind))).toEqual(
      new Set(['found']),
    );
    const lost = drawn(() => ({ kind: 'lost' })).lines;
    expect(lost.map(({ role, kind }) => [role, kind])).toEqual([['white', 'soft']]);
  });

  test('what she decided counts before what was measured', () => {
    expect(drawn(() => ({ wish: 'lose' })).lines).toEqual([]);
    expect(new Set(drawn(() => ({ wish: 'soften' })).lines.map(({ kind }) => kind))).toEqual(
      new Set(['soft']),
    );
    const sharp = drawn(() => ({ kind: 'lost', wish: 'sharpen', contrast: 30 })).lines;
    expect(new Set(sharp.map(({ kind }) => kind))).toEqual(new Set(['hard']));
  });
});

test('the subject is never joined to its ground', () => {
  const two = [made({ target: [75, 0, 0] }), made({ passage: 'subject', target: [75, 0, 0] })];
  const small = mapOf((x, y) => (round(x, y, 200, 150, 4) ? 1 : 0));
  expect(outlineOf(madeReading(small, two), small).lines).toHaveLength(1);
});

test('whites side by side have no line between them', () => {
  const white = made({ band: 1, reserve: true, target: [95, 0, 0] });
  const halves = mapOf((x) => (x < 200 ? 0 : 1));
  expect(outlineOf(madeReading(halves, [white, { ...white, family: 2 }]), halves).lines).toEqual(
    [],
  );
});

test('a map of another size is refused; a reading without edges gives an empty drawing', () => {
  expect(() => outlineOf(reading, new Uint8Array(5))).toThrow(RangeError);
  const { edges: _, ...old } = reading;
  expect(outlineOf(old, map).lines).toEqual([]);
  expect(outline.widthMm / outline.heightMm).toBeCloseTo(raster.width / raster.height, 9);
});
