import type { Edge } from '../../../app/core/reading/edges/edge.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import type { Slot } from '../../../app/core/reading/slot.ts';
import { tracedEdges } from './traced-edges.ts';

/** 400 x 300 mm at 2 px a mm. */
export const raster = { width: 800, height: 600 };
export const sheet = { widthMm: 400, heightMm: 300 };

export const made = (over: Partial<Slot>): Slot => ({
  passage: 'sheet',
  band: 2,
  family: 1,
  share: 0.25,
  lab: [50, 0, 0],
  target: [50, 0, 0],
  reserve: false,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 1000,
  ...over,
});

/** A map of slots, each pixel asked for by its place in mm. */
export const mapOf = (slotAt: (xMm: number, yMm: number) => number): Uint8Array =>
  Uint8Array.from({ length: raster.width * raster.height }, (_, i) =>
    slotAt(((i % raster.width) + 0.5) / 2, (Math.floor(i / raster.width) + 0.5) / 2),
  );

/** A reading of that map with every edge as it lies, of one kind unless said otherwise. */
export function madeReading(
  map: Uint8Array,
  slots: readonly Slot[],
  kindOf: (edge: Edge) => Partial<Edge> = () => ({}),
): Reading {
  const edges = tracedEdges(map, raster).map((edge): Edge => ({ ...edge, ...kindOf(edge) }));
  return {
    engine: 'made',
    raster,
    sheet,
    lightness: { histogram: [], p5: 10, p50: 50, p95: 90 },
    bands: [],
    proposedBands: 3,
    bandsWhy: '',
    families: [],
    slots,
    borders: [],
    edges,
    reserves: { share: 0, count: 0, smallCount: 0 },
    range: { mode: 'opened', lo: 0, hi: 100, dark: 20, paper: 95 },
    brokenShare: 0,
    warnings: [],
  };
}
