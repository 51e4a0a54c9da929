import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { type LinearRaster, lightnessPlane } from '../../../../../app/core/raster/linear-raster.ts';
import { type Edge, edgeShares } from '../../../../../app/core/reading/edges/edge.ts';
import { findEdges } from '../../../../../app/core/reading/edges/measure-edges.ts';
import {
  blurredPicture,
  type MadePicture,
  round,
  slanting,
} from '../../../../support/reading/blurred-picture.ts';
import { greyRaster } from '../../../../support/reading/grey-raster.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';

const size = { width: 800, height: 600 };
const pxPerMm = 2.1;
const sheet = { widthMm: 381, heightMm: 286 };

const edgesIn = ({ slots, lightness }: MadePicture): Edge[] =>
  runToEnd(findEdges(slots, lightness, greyRaster(lightness, size), pxPerMm)).edges;

const only = (edges: readonly Edge[]): Edge => {
  expect(edges).toHaveLength(1);
  return edges[0] as Edge;
};

const made = (rise: number, sigma: number, noise = 1, distance = slanting(size, 20)) =>
  blurredPicture(size, distance, [{ at: 0, rise }], { base: 20, sigma, noise, seed: 9 });

// Limits and figures are (own): the docstrings of what is tested say why.

// Long side 800 px: 0.6 % is 4.8 px, sigma 1.87; the photo's own blur is held to 1.5 px.
test.each([
  [40, 0.6, 'hard', false],
  [7, 0.6, 'found', false],
  [2, 0.6, 'lost', false],
  [40, 4, 'soft', false],
  [20, 12, 'soft', false],
  [60, 24, 'soft', true],
  [6, 28, 'lost', true], // rises 0.7 L* per 1 %
] as const)('%f L* blurred by %f px: %s', (rise, sigma, kind, graded) => {
  const edge = only(edgesIn(made(rise, sigma)));
  expect([edge.kind, edge.graded, edge.a, edge.b]).toEqual([kind, graded, 0, 1]);
  expect(Math.abs(edge.contrast - rise)).toBeLessThan(0.7);
  expect(edge.lengthMm * pxPerMm).toBeGreaterThan(600);
});

test('a round edge closes; its path keeps to the circle within half a pixel and a bit', () => {
  const edge = only(edgesIn(made(40, 1, 0, round(size, 150))));
  expect(edge.path[0]).toEqual(edge.path.at(-1));
  expect(edge.path.length).toBeLessThan(80);
  for (const [x, y] of edge.path) {
    const radius = Math.hypot(x * size.width - 400, y * size.height - 300);
    expect(Math.abs(radius - 150)).toBeLessThan(1);
  }
  expect(Math.abs((edge.lengthMm * pxPerMm) / (2 * Math.PI * 150) - 1)).toBeLessThan(0.02);
});

describe('lost and found along one contour', () => {
  /** The upper half differs by 40 L*, then the difference falls to 2 over 60 px. */
  const lightness = new Float32Array(size.width * size.height);
  const slots = new Uint8Array(lightness.length);
  for (let y = 0, i = 0; y < size.height; y++) {
    const part = Math.min(1, Math.max(0, (y - 270) / 60));
    for (let x = 0; x < size.width; x++, i++) {
      slots[i] = x < 400 ? 0 : 1;
      lightness[i] = 50 + (x < 400 ? 0 : 40 - 38 * part);
    }
  }
  const edges = edgesIn({ size, slots, lightness });

  test('stretches follow one another and fill the contour', () => {
    expect(edges.map(({ kind }) => kind)).toEqual(
      edges[0]?.kind === 'hard' ? ['hard', 'found', 'lost'] : ['lost', 'found', 'hard'],
    );
    const all = edges.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    expect(all * pxPerMm).toBeCloseTo(600, 0);
    for (const [n, edge] of edges.entries()) {
      if (n > 0) expect(edge.path[0]).toEqual(edges[n - 1]?.path.at(-1));
    }
  });

  test('shares by length', () => {
    const rows = edgeShares(edges);
    expect(rows.map(({ kind, count }) => [kind, count])).toEqual([
      ['hard', 1],
      ['soft', 0],
      ['found', 1],
      ['lost', 1],
    ]);
    expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    // 10 L* is passed at y 317, 4 L* at y 327.
    expect(rows[0]?.share).toBeCloseTo(317 / 600, 1);
    expect(edgeShares([]).every(({ share, lengthMm }) => share === 0 && lengthMm === 0)).toBe(true);
  });
});

test('contrast that wavers within 1 L* of a limit makes no new edges', () => {
  const lightness = new Float32Array(size.width * size.height);
  const slots = new Uint8Array(lightness.length);
  for (let y = 0, i = 0; y < size.height; y++) {
    const contrast = 10 + (y < 100 ? 2 : 0.8 * Math.sin(y / 15));
    for (let x = 0; x < size.width; x++, i++) {
      slots[i] = x < 400 ? 0 : 1;
      lightness[i] = x < 400 ? 30 : 30 + contrast;
    }
  }
  expect(only(edgesIn({ size, slots, lightness })).kind).toBe('hard');
});

test('lost in value, held by colour', () => {
  // Both sides have luminance 0.25 in linear light; red against green, then grey against grey.
  const sides = (left: readonly number[], right: readonly number[]): LinearRaster => {
    const plane = (channel: number): Float32Array =>
      new Float32Array(size.width * size.height).map(
        (_, i) => ((i % size.width < 400 ? left : right)[channel] as number) + 1e-4 * (i % 3),
      );
    return { ...size, red: plane(0), green: plane(1), blue: plane(2) };
  };
  const slots = new Uint8Array(size.width * size.height).map((_, i) =>
    i % size.width < 400 ? 0 : 1,
  );
  const read = (raster: LinearRaster): Edge =>
    only(runToEnd(findEdges(slots, lightnessPlane(raster), raster, pxPerMm)).edges);
  const green = (0.25 - 0.2126390058715103 * 0.6) / 0.7151686787677559;
  const coloured = read(sides([0.6, green, 0], [0.25, 0.25, 0.25]));
  expect([coloured.kind, coloured.heldByColour]).toEqual(['lost', true]);
  const grey = read(sides([0.25, 0.25, 0.25], [0.25, 0.25, 0.25]));
  expect([grey.kind, grey.heldByColour]).toEqual(['lost', false]);
});

test('one half out of focus: its edges are flagged, those of the sharp half are not', () => {
  const slots = new Uint8Array(size.width * size.height);
  const lightness = new Float32Array(slots.length);
  const [sharp, blurred] = [0.8, 5].map((sigma) =>
    blurredPicture(
      size,
      // Stripes of 80 px.
      (_x, y) => y,
      [1, 2, 3, 4, 5, 6, 7].map((n) => ({ at: 75 * n, rise: n % 2 ? 40 : -40 })),
      { base: 30, sigma, noise: 1, seed: 4 },
    ),
  ) as [MadePicture, MadePicture];
  for (let i = 0; i < slots.length; i++) {
    const from = i % size.width < 400 ? sharp : blurred;
    slots[i] = ((from.slots[i] as number) % 2) + (i % size.width < 400 ? 0 : 2);
    lightness[i] = from.lightness[i] as number;
  }
  const edges = edgesIn({ size, slots, lightness });
  const left = edges.filter(({ b }) => b === 1);
  const right = edges.filter(({ a }) => a === 2);
  expect([left.length, right.length]).toEqual([7, 7]);
  expect(left.every(({ kind, outOfFocus }) => kind === 'hard' && !outOfFocus)).toBe(true);
  expect(right.every(({ kind, outOfFocus }) => kind === 'soft' && outOfFocus)).toBe(true);
});

describe('the whole reading', () => {
  const whole = { width: 640, height: 480 };
  const read = async (rise: number, sigma: number) => {
    const { lightness } = blurredPicture(whole, round(whole, 140), [{ at: 0, rise }], {
      base: 75 - rise,
      sigma,
      noise: 1,
      seed: 12,
    });
    const clipped = { light: 0, dark: 0 };
    return (await readFor({ raster: greyRaster(lightness, whole), clipped }, { bands: 2 }, sheet))
      .reading;
  };
  // Long side 640 px: 0.6 % is sigma 1.5.
  test.each([
    [40, 0.6, 'hard'],
    [40, 2.7, 'soft'],
    [40, 5, 'soft'],
    [8, 0.6, 'found'],
    [20, 2.7, 'soft'],
  ] as const)('a disc %f L* off, blurred by %f px: %s', async (rise, sigma, kind) => {
    const { edges = [], borders } = await read(rise, sigma);
    const share = edgeShares(edges).find((row) => row.kind === kind)?.share ?? 0;
    expect(share).toBeGreaterThan(0.95);
    const disc = edges.find((edge) => edge.kind === kind) as Edge;
    expect(Math.abs(disc.contrast - rise)).toBeLessThan(0.7);
    expect(borders.some(({ soft }) => soft > 0.9)).toBe(kind === 'soft');
  });

  test('one soft edge read in several values stays one soft edge', async () => {
    const { lightness } = blurredPicture(whole, round(whole, 140), [{ at: 0, rise: 60 }], {
      base: 20,
      sigma: 5.5,
      noise: 1,
      seed: 12,
    });
    const clipped = { light: 0, dark: 0 };
    const input = { raster: greyRaster(lightness, whole), clipped };
    const { reading } = await readFor(input, { limits: [35, 50, 65] }, sheet);
    expect(reading.bands).toHaveLength(4);
    const soft = edgeShares(reading.edges ?? []).find(({ kind }) => kind === 'soft');
    expect(soft?.share).toBeGreaterThan(0.95);
    for (const { contrast, kind } of reading.edges ?? []) {
      if (kind === 'soft') expect(Math.abs(contrast - 60)).toBeLessThan(1.5);
    }
  });

  test('nothing but hard edges: stiff, and she is told; not so with soft ones among them', async () => {
    const squares = painted(320, 240, (x, y) => {
      const light = (Math.floor(x / 40) + Math.floor(y / 40)) % 2 === 0;
      return light ? [225, 222, 210] : [60, 66, 80];
    });
    const { reading } = await readFor(squares);
    expect(reading.warnings.map(({ code }) => code)).toContain('all-hard');
    const soft = await read(40, 5);
    expect(soft.warnings.map(({ code }) => code)).not.toContain('all-hard');
  });
});
