import type { Point } from '../colour/lab.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { findDeepestPlaces } from './deepest-places.ts';
import { labelRuns, type RunLabels } from './label-shapes.ts';
import { shrinkSlots } from './paint-slots.ts';
import type { PixelSize } from './size.ts';

/** One connected shape: its kind, its innermost place and its size, both in shares of the picture. */
export interface ShapePlace {
  readonly kind: number;
  readonly place: Point;
  readonly share: number;
}

/** Long side of the map in which shapes are sought, px: fine enough for the largest ones. */
const searchedPx = 320;

/** The pixel deepest inside one shape. */
function findInnermost({ runs, shapes }: RunLabels, shape: number, size: PixelSize): number {
  const mask = new Uint8Array(size.width * size.height);
  for (let run = 0; run < shapes.length; run++) {
    if (shapes[run] === shape) mask.fill(1, runs.starts[run], runs.starts[run + 1]);
  }
  return Math.max(...findDeepestPlaces(runToEnd(labelRuns(mask, size)), size));
}

/**
 * The largest connected shapes of a slot map, largest first, at most `most`. `kindOf` says for a slot
 * which shapes it belongs to: neighbours of one kind are one shape; below 0 it belongs to none.
 */
export function largestShapes(
  slotMap: Uint8Array,
  size: PixelSize,
  kindOf: (slot: number) => number,
  most: number,
): ShapePlace[] {
  const small = shrinkSlots(slotMap, size.width, size.height, searchedPx);
  const kinds = Array.from({ length: 256 }, (_, slot) => kindOf(slot));
  /** A kind goes by the first slot that is of it: 256 slots have no more kinds than fit a byte. */
  const codes = Uint8Array.from(kinds, (kind) =>
    kinds.findIndex((k) => k === kind || (k < 0 && kind < 0)),
  );
  const labels = runToEnd(
    labelRuns(
      small.slotMap.map((slot) => codes[slot]),
      small,
    ),
  );
  const shapes = Array.from(labels.areasPx, (areaPx, shape) => ({ areaPx, shape }));
  return shapes
    .filter(({ shape }) => kinds[labels.kinds[shape]] >= 0)
    .sort((one, other) => other.areaPx - one.areaPx)
    .slice(0, most)
    .map(({ areaPx, shape }) => {
      const pixel = findInnermost(labels, shape, small);
      const x = ((pixel % small.width) + 0.5) / small.width;
      const y = (Math.floor(pixel / small.width) + 0.5) / small.height;
      return {
        kind: kinds[labels.kinds[shape]],
        place: [x, y],
        share: areaPx / small.slotMap.length,
      };
    });
}
