import type { PixelSize } from '../../app/model/pixel-size.ts';
import type { ReadingWishes } from '../../app/model/reading.ts';
import type { SubjectFacts } from '../../app/model/subject.ts';
import { plainGround } from './alter/plain-ground.ts';
import type { LabPlanes } from './pixels/lab-planes.ts';
import type { LinearRaster } from './pixels/linear-raster.ts';
import { lightnessPlane } from './pixels/linear-raster.ts';
import { findPassages } from './subject/find-passages.ts';
import { subjectFacts } from './subject/subject-facts.ts';
import { subjectPlanes } from './subject/subject-planes.ts';

export interface Passages {
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
