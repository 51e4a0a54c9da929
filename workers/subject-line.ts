import { lightnessPlane } from '../app/core/raster/linear-raster.ts';
import { findPassages } from '../app/core/reading/subject/find-subject.ts';
import { type SubjectPlanes, subjectPlanes } from '../app/core/reading/subject/subject-colours.ts';
import type { SubjectRequest, SubjectResult } from './api.ts';
import { nextTurn } from './jobs.ts';
import { quickSimplify } from './kernels/reading-desk.ts';
import { readRaster } from './photo/read-raster.ts';

const wholePicture = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;

/** Of the picture she circles in: made once, then every stroke is quick. Only the last one is kept. */
interface KeptPlanes {
  readonly picture: string;
  readonly pxPerMm: number;
  planes: SubjectPlanes | null;
  problem: unknown;
  /** Whether she has drawn: from then on nothing is practised. */
  drawn: boolean;
}

let kept: KeptPlanes | null = null;

async function prepare(
  into: KeptPlanes,
  { referenceJpeg, longSidePx }: SubjectRequest,
): Promise<void> {
  const photo = new Blob([referenceJpeg], { type: 'image/jpeg' });
  const { raster } = await readRaster(photo, wholePicture, longSidePx, nextTurn);
  const pieces = quickSimplify(raster, into.pxPerMm);
  for (;;) {
    const piece = pieces.next();
    await nextTurn();
    if (!piece.done) continue;
    const size = { width: raster.width, height: raster.height };
    into.planes = subjectPlanes(piece.value, lightnessPlane(raster), size);
    return practise(into, into.planes);
  }
}

/** An oval in the middle, its line thrown away: code that has run is compiled when her stroke comes. */
async function practise(on: KeptPlanes, planes: SubjectPlanes): Promise<void> {
  const path = Array.from({ length: 40 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 40;
    return [0.5 + 0.3 * Math.cos(angle), 0.5 + 0.3 * Math.sin(angle)] as const;
  });
  const pieces = findPassages(planes, [{ mode: 'circle', path, brush: 0 }], on.pxPerMm);
  while (kept === on && !on.drawn && !pieces.next().done) await nextTurn();
}

/** Not bound to the job that asks first: if that one is given up, the next finds it under way. */
function planesFor(request: SubjectRequest): KeptPlanes {
  const { picture, pxPerMm } = request;
  if (kept?.picture === picture && !kept.problem) return kept;
  const made: KeptPlanes = { picture, pxPerMm, planes: null, problem: null, drawn: false };
  kept = made;
  void prepare(made, request).catch((thrown: unknown) => {
    made.problem = thrown;
  });
  return made;
}

/** Gives their memory back: a reading needs it. */
export function forgetSubject(): void {
  kept = null;
}

/**
 * The subject her strokes mean; null without one. Without strokes the picture is only made ready.
 * `pause` is awaited between pieces and may throw to stop.
 */
export async function subjectLine(
  request: SubjectRequest,
  pause: () => Promise<void>,
): Promise<SubjectResult | null> {
  const found = planesFor(request);
  while (!found.planes) {
    await pause();
    if (found.problem) throw found.problem;
  }
  if (request.strokes.length === 0) return null;
  found.drawn = true;
  const pieces = findPassages(found.planes, request.strokes, found.pxPerMm);
  for (;;) {
    const piece = pieces.next();
    await pause();
    if (piece.done) return piece.value;
  }
}
