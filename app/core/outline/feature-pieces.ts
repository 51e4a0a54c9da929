import type { Point } from '../colour/lab.ts';
import { traceLine } from '../raster/trace-outlines.ts';
import type { Detail } from '../reading/details/detail.ts';
import type { Reading } from '../reading/reading.ts';
import type { OutlinePiece } from './choose-strokes.ts';

/** A small dark shape is drawn from so near the centre of interest on, and from this size on, mm2 (own). */
const least = { near: 0.85, areaMm2: 4 } as const;
/** More than these would be a pattern, not features (own). */
const mostFeatures = 30;
/** Every feature matters as much as a plain edge, L*. */
const featureContrast = 25;

/** The closed lines round the cells of a small shape, in cells of the grid. */
function linesRound({ lines }: Pick<Detail, 'lines'>): Point[][] {
  let [left, top, right, bottom] = [Infinity, Infinity, 0, 0];
  for (let n = 0; n < lines.length; n += 3) {
    top = Math.min(top, lines[n]);
    bottom = Math.max(bottom, lines[n] + 1);
    left = Math.min(left, lines[n + 1]);
    right = Math.max(right, lines[n + 2]);
  }
  // A rim of empty cells closes every line.
  const size = { width: right - left + 2, height: bottom - top + 2 };
  const mask = new Uint8Array(size.width * size.height);
  for (let n = 0; n < lines.length; n += 3) {
    const start = (lines[n] - top + 1) * size.width + 1 - left;
    mask.fill(1, start + lines[n + 1], start + lines[n + 2]);
  }
  return traceLine(mask, size).map(({ places }) =>
    Array.from(
      { length: places.length / 2 },
      (_, i): Point => [places[2 * i] + left - 1, places[2 * i + 1] + top - 1],
    ),
  );
}

/** Outlines of the small dark shapes in the subject, eyes and nostrils in a face: what matters most first, mm. */
export function featurePieces({
  details,
  raster,
  sheet,
}: Pick<Reading, 'details' | 'raster' | 'sheet'>): OutlinePiece[] {
  if (!details) return [];
  const [across, down] = [
    (details.cellPx * sheet.widthMm) / raster.width,
    (details.cellPx * sheet.heightMm) / raster.height,
  ];
  return details.shapes
    .filter(
      ({ isLight, near, areaMm2 }) => !isLight && near >= least.near && areaMm2 >= least.areaMm2,
    )
    .slice(0, mostFeatures)
    .flatMap((detail) =>
      linesRound(detail).map((line) => ({
        kind: 'found' as const,
        role: 'inner' as const,
        points: line.map(([x, y]): Point => [x * across, y * down]),
        contrast: featureContrast,
        near: detail.near,
      })),
    );
}
