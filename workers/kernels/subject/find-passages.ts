import type { SubjectFacts, SubjectStroke } from '../../../app/model/subject.ts';
import { findSubject } from './find-subject.ts';
import { subjectFacts } from './subject-facts.ts';
import type { SubjectPlanes } from './subject-planes.ts';

/** The sheet parted into ground (0 in the mask) and subject (1). */
export interface FoundSubject {
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
