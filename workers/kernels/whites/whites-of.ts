import type { Edge } from '../../../app/model/edge.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { Border } from '../../../app/model/reading.ts';
import { shortSide } from '../../../app/model/short-side.ts';
import type { Slot } from '../../../app/model/slot.ts';
import type { White } from '../../../app/model/whites.ts';
import { firstWashIsWet } from '../plan/first-wash-is-wet.ts';
import { deepestPlaces } from './deepest-places.ts';
import { softOutlines } from './soft-outlines.ts';
import { type WhiteAreas, whiteAreas } from './white-areas.ts';
import { isTedious, whiteWay } from './white-way.ts';

/** What has been found in a picture so far. */
export interface FoundShapes {
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
  for (let i = 0; i < mask.length; i++) mask[i] = table[slotMap[i] as number] as number;
  return mask;
}

type Measured = Omit<White, 'way' | 'why'>;

/** Which areas hold a pixel of a slot white by her brush. */
function areasByHand(
  { labels: { runs, shapes, kinds } }: WhiteAreas,
  slotMap: Uint8Array,
  slots: readonly Slot[],
): Uint8Array {
  const byHand = new Uint8Array(kinds.length);
  const isHers = slots.map((slot) => slot.byHand === true);
  if (!isHers.includes(true)) return byHand;
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run] as number;
    if (kinds[shape] === 0 || byHand[shape] === 1) continue;
    for (let i = runs.starts[run] as number; i < (runs.starts[run + 1] as number); i++) {
      if (isHers[slotMap[i] as number]) byHand[shape] = 1;
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
    const here = whites.filter((white) => passageOf(white) === passage);
    alike.set(passage, here.filter(({ shortSideMm }) => isTedious(shortSideMm)).length);
  }
  return whites.map((white) => {
    const passage = passageOf(white);
    const round = { wet: wet.get(passage) === true, alike: alike.get(passage) ?? 0 };
    return { ...white, ...whiteWay(white, round) };
  });
}

/**
 * Every connected area kept white, whatever its band, family or passage, largest first, alike ones in
 * reading order; with the way proposed. Deterministic. Hands back control now and then.
 */
export function* whitesOf(
  { slotMap, slots, edges, borders }: FoundShapes,
  size: PixelSize,
  pxPerMm: number,
): Generator<void, White[]> {
  const isWhite = slots.map((slot) => slot.reserve);
  if (!isWhite.includes(true)) return [];
  const mask = whiteMask(slotMap, isWhite);
  yield;
  const areas = yield* whiteAreas(mask, size);
  yield;
  const places = deepestPlaces(areas, size);
  yield;
  const soft = softOutlines(areas, slotMap, isWhite, edges, size);
  const byHand = areasByHand(areas, slotMap, slots);
  const { kinds, areasPx } = areas.labels;
  const whites: Measured[] = [];
  for (let area = 0; area < kinds.length; area++) {
    if (kinds[area] === 0) continue;
    const place = places[area] as number;
    const px = areasPx[area] as number;
    const y = Math.floor(place / size.width);
    whites.push({
      at: [(place - y * size.width + 0.5) / size.width, (y + 0.5) / size.height],
      slot: slotMap[place] as number,
      areaMm2: px / (pxPerMm * pxPerMm),
      shortSideMm: shortSide(px, areas.outlinesPx[area] as number) / pxPerMm,
      softShare: soft[area] as number,
      byHand: byHand[area] === 1,
    });
  }
  whites.sort((one, other) => other.areaMm2 - one.areaMm2);
  return withWays(whites, slots, borders);
}
