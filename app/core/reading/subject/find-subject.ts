import { labelRuns, type RunLabels, shapeAt } from '../../raster/label-shapes.ts';
import { type LabPlanes, type LinearRaster, lightnessPlane } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import { plainGround } from '../alter/plain-ground.ts';
import type { ReadingWishes } from '../reading.ts';
import { coarseSubject } from './coarse-subject.ts';
import { closeUp, fromCloseUp, refineLine } from './refine-line.ts';
import type { SubjectFacts, SubjectStroke } from './subject.ts';
import { colourGrid, type SubjectPlanes, subjectPlanes } from './subject-colours.ts';
import { subjectFacts } from './subject-facts.ts';

interface Passages {
  /** 1 for the subject, 0 for its ground; null without a subject. */
  readonly mask: Uint8Array | null;
  readonly facts: SubjectFacts | null;
  /** What is read on: the same raster, or a copy with its ground made plain. */
  readonly raster: LinearRaster;
}

/**
 * Parts the sheet into subject and ground as her strokes say. Where the ground is to be one plain wash
 * it is made so after that, in `planes` too: the line is always the one in the picture.
 */
export function* readPassages(
  raster: LinearRaster,
  planes: LabPlanes,
  wishes: ReadingWishes,
  pxPerMm: number,
): Generator<void, Passages> {
  if (!wishes.subject?.length) return { mask: null, facts: null, raster };
  const size: PixelSize = { width: raster.width, height: raster.height };
  const colours = subjectPlanes(planes, lightnessPlane(raster), size);
  yield;
  const found = yield* findPassages(colours, wishes.subject, pxPerMm);
  if (!found) return { mask: null, facts: null, raster };
  if (!wishes.plainGround) return { ...found, raster };
  const plain = yield* plainGround(planes, raster, found.mask, pxPerMm);
  yield;
  const altered = subjectPlanes(planes, lightnessPlane(plain), size);
  yield;
  const facts = subjectFacts(altered, found.mask, pxPerMm);
  return { mask: found.mask, facts, raster: plain };
}

/** The sheet parted into ground (0 in the mask) and subject (1). */
interface FoundSubject {
  readonly mask: Uint8Array;
  readonly facts: SubjectFacts;
}

/** The subject her strokes mean and how it stands against its ground; null without one. */
export function* findPassages(
  planes: SubjectPlanes,
  strokes: readonly SubjectStroke[],
  pxPerMm: number,
): Generator<void, FoundSubject | null> {
  const mask = yield* findSubject(planes, strokes, pxPerMm);
  if (!mask) return null;
  yield;
  return { mask, facts: subjectFacts(planes, mask, pxPerMm) };
}

/** Cells of the long side on which the line is first sought: quick, and blind to the finest grain. */
const gridLongSide = 240;

/**
 * The subject she circled: 1 for every pixel of it, 0 for its ground; null where the circle holds
 * nothing of the picture, or all of it is left. The first stroke is the circle, the others correct it in
 * order. Deterministic. Hands back control now and then.
 */
export function* findSubject(
  planes: SubjectPlanes,
  strokes: readonly SubjectStroke[],
  pxPerMm: number,
): Generator<void, Uint8Array | null> {
  const grid = colourGrid(planes, gridLongSide);
  yield;
  const coarse = yield* coarseSubject(grid, strokes);
  if (!coarse) return null;
  const near = closeUp(planes, grid, coarse.sides, strokes.slice(1));
  if (!near) return null;
  const mask = refineLine(near, coarse.favour);
  yield;
  yield* cleanSubject(mask, near.colours.size, pxPerMm, near.strokes);
  const whole = fromCloseUp(mask, near, planes.size);
  return whole.includes(1) && whole.includes(0) ? whole : null;
}

/** Holes and parts smaller than this square are not worth a line of their own, mm. */
const smallestMm = 2;
/** A part this much smaller than the largest one is stray. */
const leastOfLargest = 0.04;

/** Shapes that a correction of that mode runs through: she means them, however small. */
function findTouched(
  corrections: readonly SubjectStroke[],
  mode: SubjectStroke['mode'],
  labels: RunLabels,
  size: PixelSize,
): Set<number> {
  const { width, height } = size;
  const found = new Set<number>();
  for (const stroke of corrections) {
    if (stroke.mode !== mode) continue;
    for (const [x, y] of stroke.path) {
      const column = Math.floor(x * width);
      const row = Math.floor(y * height);
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      found.add(shapeAt(labels, size, row * width + column));
    }
  }
  return found;
}

/** One or few parts without small holes, in place; what she painted herself stays. */
function* cleanSubject(
  mask: Uint8Array,
  size: PixelSize,
  pxPerMm: number,
  corrections: readonly SubjectStroke[],
): Generator<void> {
  const labels = yield* labelRuns(mask, size);
  yield;
  const { runs, shapes, kinds, areasPx } = labels;
  const smallestPx = (smallestMm * pxPerMm) ** 2;
  const largest = areasPx.reduce(
    (most, area, i) => (kinds[i] === 1 ? Math.max(most, area) : most),
    0,
  );
  const added = findTouched(corrections, 'add', labels, size);
  const taken = findTouched(corrections, 'take', labels, size);
  const turned = areasPx.map((area, shape) => {
    if (kinds[shape] === 1) {
      const stray = area < Math.max(smallestPx, leastOfLargest * largest) && area < largest;
      return stray && !added.has(shape) ? 1 : 0;
    }
    return area < smallestPx && !taken.has(shape) ? 1 : 0;
  });
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    if (turned[shape] === 1) mask.fill(1 - kinds[shape], runs.starts[run], runs.starts[run + 1]);
  }
}
