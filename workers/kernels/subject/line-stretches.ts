import type { Point } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { type LineStretch, lostUnder, standsOutFrom } from '../../../app/model/subject.ts';
import type { EvenPlaces } from './even-places.ts';

/** 0 where the line is lost, 1 where it can be seen, 2 where it stands out; below 0 for a darker subject. */
function classOf(contrast: number): number {
  const size = Math.abs(contrast);
  if (size < lostUnder) return 0;
  return Math.sign(contrast) * (size < standsOutFrom ? 1 : 2);
}

/** Four places are a tenth of a pixel. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

/** One line cut where the way it stands against its ground changes. `contrasts` by place, L*. */
export function lineStretches(
  { places, closed, stepPx }: EvenPlaces,
  contrasts: Float32Array,
  { width, height }: PixelSize,
  pxPerMm: number,
): LineStretch[] {
  const count = contrasts.length;
  const kinds = Array.from(contrasts, classOf);
  const pointAt = (i: number): Point => [
    rounded((places[2 * (i % count)] as number) / width),
    rounded((places[2 * (i % count) + 1] as number) / height),
  ];
  // A closed line is taken up where its kind changes, so that no stretch is cut in two.
  const start = closed
    ? Math.max(
        0,
        kinds.findIndex((kind, i) => kind !== kinds.at(i - 1)),
      )
    : 0;
  // A place stands for the step after it; an open line's last place for none.
  const steps = closed ? count : count - 1;
  const stretches: LineStretch[] = [];
  for (let from = 0; from < steps; ) {
    const kind = kinds[(start + from) % count];
    let to = from;
    let sum = 0;
    const path: Point[] = [];
    while (to < steps && kinds[(start + to) % count] === kind) {
      sum += contrasts[(start + to) % count] as number;
      path.push(pointAt(start + to));
      to++;
    }
    path.push(pointAt(start + to));
    const length = to - from;
    stretches.push({ path, contrast: sum / length, lengthMm: (length * stepPx) / pxPerMm });
    from = to;
  }
  return stretches;
}
