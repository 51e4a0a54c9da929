import { findDeepestPlaces } from '../../raster/deepest-places.ts';
import { labelRuns, measureOutlines, type RunLabels, shapeAt } from '../../raster/label-shapes.ts';
import { type PixelSize, shortSide } from '../../raster/size.ts';
import type { Edge } from '../edges/edge.ts';
import { firstWashIsWet } from '../edges/slot-borders.ts';
import type { Border } from '../reading.ts';
import type { Slot } from '../slot.ts';
import { chooseWhiteWay, isTedious, type White } from './whites.ts';

/** What has been found in a picture so far. */
interface FoundShapes {
  /** Index into `slots` of every pixel. */
  readonly slotMap: Uint8Array;
  readonly slots: readonly Slot[];
  readonly edges: readonly Edge[];
  readonly borders: readonly Border[];
}

/** 1 for every pixel that stays white. */
function whiteMask(slotMap: Uint8Array, isWhite: readonly boolean[]): Uint8Array {
  const table = Uint8Array.from({ length: 256 }, (_, slot) => (isWhite[slot] ? 1 : 0));
  const mask = new Uint8Array(slotMap.length);
  for (let i = 0; i < mask.length; i++) mask[i] = table[slotMap[i]];
  return mask;
}

type Measured = Omit<White, 'way' | 'why'>;

/** Which areas hold a pixel of a slot white by her brush. */
function areasByHand(
  { runs, shapes, kinds }: RunLabels,
  slotMap: Uint8Array,
  slots: readonly Slot[],
): Uint8Array {
  const byHand = new Uint8Array(kinds.length);
  const isHers = slots.map((slot) => slot.byHand === true);
  if (!isHers.includes(true)) return byHand;
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    if (kinds[shape] === 0 || byHand[shape] === 1) continue;
    for (let i = runs.starts[run]; i < runs.starts[run + 1]; i++) {
      if (isHers[slotMap[i]]) byHand[shape] = 1;
    }
  }
  return byHand;
}

/** The ways, passage by passage: what the first wash round a white is decides. */
function withWays(
  whites: readonly Measured[],
  slots: readonly Slot[],
  borders: readonly Border[],
): White[] {
  const wet = new Map<string, boolean>();
  const alike = new Map<string, number>();
  const passageOf = ({ slot }: Measured): string => slots[slot]?.passage ?? '';
  for (const passage of new Set(slots.map((slot) => slot.passage))) {
    const painted = slots.flatMap((slot, i) =>
      slot.passage === passage && !slot.reserve ? [i] : [],
    );
    wet.set(passage, firstWashIsWet({ borders }, painted));
    const passageWhites = whites.filter((white) => passageOf(white) === passage);
    alike.set(passage, passageWhites.filter(({ shortSideMm }) => isTedious(shortSideMm)).length);
  }
  return whites.map((white) => {
    const passage = passageOf(white);
    const round = { wet: wet.get(passage) === true, alike: alike.get(passage) ?? 0 };
    return { ...white, ...chooseWhiteWay(white, round) };
  });
}

/**
 * Every connected area kept white, whatever its band, family or passage, largest first, alike ones in
 * reading order; with the way proposed. Deterministic. Hands back control now and then.
 */
export function* findWhites(
  { slotMap, slots, edges, borders }: FoundShapes,
  size: PixelSize,
  pxPerMm: number,
): Generator<void, White[]> {
  const isWhite = slots.map((slot) => slot.reserve);
  if (!isWhite.includes(true)) return [];
  const mask = whiteMask(slotMap, isWhite);
  yield;
  const areas = yield* labelRuns(mask, size);
  yield;
  const outlinesPx = measureOutlines(areas);
  const places = findDeepestPlaces(areas, size);
  yield;
  const soft = softOutlines(areas, slotMap, isWhite, edges, size);
  const byHand = areasByHand(areas, slotMap, slots);
  const { kinds, areasPx } = areas;
  const whites: Measured[] = [];
  for (let area = 0; area < kinds.length; area++) {
    if (kinds[area] === 0) continue;
    const place = places[area];
    const px = areasPx[area];
    const y = Math.floor(place / size.width);
    whites.push({
      at: [(place - y * size.width + 0.5) / size.width, (y + 0.5) / size.height],
      slot: slotMap[place],
      areaMm2: px / (pxPerMm * pxPerMm),
      shortSideMm: shortSide(px, outlinesPx[area]) / pxPerMm,
      softShare: soft[area],
      byHand: byHand[area] === 1,
    });
  }
  whites.sort((one, other) => other.areaMm2 - one.areaMm2);
  return withWays(whites, slots, borders);
}

/** How far beside a simplified line its shape is looked for, px. */
const reach = 3;

/** The pixel nearest to a place of the line that belongs to a slot; -1 where none is within reach. */
function pixelOf(
  slotMap: Uint8Array,
  { width, height }: PixelSize,
  slot: number,
  x: number,
  y: number,
): number {
  let found = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let row = Math.floor(y - reach); row <= y + reach; row++) {
    if (row < 0 || row >= height) continue;
    for (let column = Math.floor(x - reach); column <= x + reach; column++) {
      if (column < 0 || column >= width || slotMap[row * width + column] !== slot) continue;
      const away = (column + 0.5 - x) ** 2 + (row + 0.5 - y) ** 2;
      if (away >= least) continue;
      least = away;
      found = row * width + column;
    }
  }
  return found;
}

/**
 * Share of every area's outline that is soft or lost, 0..1 by length, from the edges between what
 * stays white and what does not; 0 where no edge of it was long enough to be measured.
 */
function softOutlines(
  areas: RunLabels,
  slotMap: Uint8Array,
  isWhite: readonly boolean[],
  edges: readonly Edge[],
  size: PixelSize,
): Float64Array {
  const count = areas.kinds.length;
  const soft = new Float64Array(count);
  const all = new Float64Array(count);
  for (const { a, b, kind, lengthMm, path } of edges) {
    if (isWhite[a] === isWhite[b]) continue;
    // One edge runs along one shape: its middle tells which.
    const [x0, y0] = path[Math.floor((path.length - 1) / 2)] ?? [0, 0];
    const [x1, y1] = path[Math.ceil((path.length - 1) / 2)] ?? [0, 0];
    const [x, y] = [((x0 + x1) / 2) * size.width, ((y0 + y1) / 2) * size.height];
    const pixel = pixelOf(slotMap, size, isWhite[a] ? a : b, x, y);
    if (pixel < 0) continue;
    const area = shapeAt(areas, size, pixel);
    all[area] = all[area] + lengthMm;
    if (kind === 'soft' || kind === 'lost') soft[area] = soft[area] + lengthMm;
  }
  return soft.map((length, i) => (length > 0 ? length / all[i] : 0));
}
