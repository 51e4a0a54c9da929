import { lostUnder, type SubjectFacts, standsOutFrom } from '../../../app/model/subject.ts';
import { evenPlaces } from './even-places.ts';
import { lineContrast } from './line-contrast.ts';
import { lineStretches } from './line-stretches.ts';
import { codesPerLightness, type SubjectPlanes } from './subject-planes.ts';
import { traceLine } from './trace-line.ts';

/** The line is looked across every so many mm. */
const stepMm = 1.5;

/** How the subject (1 in the mask) stands against its ground. Both must have pixels. */
export function subjectFacts(
  planes: SubjectPlanes,
  mask: Uint8Array,
  pxPerMm: number,
): SubjectFacts {
  const sums = [0, 0];
  const counts = [0, 0];
  for (let i = 0; i < mask.length; i++) {
    const side = mask[i] as 0 | 1;
    sums[side] = (sums[side] as number) + (planes.lightness[i] as number);
    counts[side] = (counts[side] as number) + 1;
  }
  const mean = (side: 0 | 1): number =>
    (sums[side] as number) / (counts[side] as number) / codesPerLightness;
  const line = traceLine(mask, planes.size).flatMap((traced) => {
    const places = evenPlaces(traced, Math.max(2, stepMm * pxPerMm));
    return lineStretches(places, lineContrast(places, planes, mask), planes.size, pxPerMm);
  });
  const shareOf = (counted: (contrast: number) => boolean): number => {
    let some = 0;
    let all = 0;
    for (const { contrast, lengthMm } of line) {
      all += lengthMm;
      if (counted(Math.abs(contrast))) some += lengthMm;
    }
    return all > 0 ? some / all : 0;
  };
  return {
    share: (counts[1] as number) / mask.length,
    meanLightness: { subject: mean(1), ground: mean(0) },
    line,
    standsOutShare: shareOf((contrast) => contrast >= standsOutFrom),
    lostShare: shareOf((contrast) => contrast < lostUnder),
  };
}
