import type { Point } from '../../colour/lab.ts';
import type { PixelSize } from '../../raster/size.ts';
import { type EvenPlaces, resampleLine } from '../../raster/smooth-line.ts';
import { traceLine } from '../../raster/trace-outlines.ts';
import { type LineStretch, lostUnder, type SubjectFacts, standsOutFrom } from './subject.ts';
import { codesPerLightness, type SubjectPlanes } from './subject-colours.ts';

/** Contrast is measured at every so many mm of the line. */
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
    sums[side] = sums[side] + planes.lightness[i];
    counts[side] = counts[side] + 1;
  }
  const mean = (side: 0 | 1): number => sums[side] / counts[side] / codesPerLightness;
  const line = traceLine(mask, planes.size).flatMap((traced) => {
    const places = resampleLine(traced, Math.max(2, stepMm * pxPerMm));
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
    share: counts[1] / mask.length,
    meanLightness: { subject: mean(1), ground: mean(0) },
    line,
    standsOutShare: shareOf((contrast) => contrast >= standsOutFrom),
    lostShare: shareOf((contrast) => contrast < lostUnder),
  };
}

/** 0 where the line is lost, 1 where it can be seen, 2 where it stands out; below 0 for a darker subject. */
function classOf(contrast: number): number {
  const size = Math.abs(contrast);
  if (size < lostUnder) return 0;
  return Math.sign(contrast) * (size < standsOutFrom ? 1 : 2);
}

/** Shares are kept to four decimals, a tenth of a pixel. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

/** Cuts a line where its class of contrast changes. `contrasts` by place, L*. */
function lineStretches(
  { places, closed, stepPx }: EvenPlaces,
  contrasts: Float32Array,
  { width, height }: PixelSize,
  pxPerMm: number,
): LineStretch[] {
  const count = contrasts.length;
  const kinds = Array.from(contrasts, classOf);
  const pointAt = (i: number): Point => [
    rounded(places[2 * (i % count)] / width),
    rounded(places[2 * (i % count) + 1] / height),
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
      sum += contrasts[(start + to) % count];
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

/** A side is sampled up to this distance from the line, % of the long side; the outer half counts. */
const reachPercent = 1.5;
/** The median over so many neighbours to either side takes single outliers out. */
const medianReach = 2;

const medianOf = (values: number[]): number => {
  values.sort((one, other) => one - other);
  const middle = values.length >> 1;
  return values.length % 2 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
};

/**
 * Median lightness code on one side of the line: of the outer half of the pixels that a walk along the
 * normal (dx, dy) meets before the side ends. Null where it meets none.
 */
function medianSideCode(
  planes: SubjectPlanes,
  mask: Uint8Array,
  side: number,
  [x, y]: readonly [number, number],
  [dx, dy]: readonly [number, number],
): number | null {
  const { width, height } = planes.size;
  const reach = Math.max(2, Math.ceil((Math.max(width, height) * reachPercent) / 100));
  const seen: number[] = [];
  for (let step = 0; step < reach; step++) {
    // The smoothed line may run a pixel beside the mask's, so the first steps may be on the wrong side.
    const column = Math.floor(x + dx * (step + 0.5));
    const row = Math.floor(y + dy * (step + 0.5));
    if (column < 0 || row < 0 || column >= width || row >= height) break;
    const i = row * width + column;
    if (mask[i] === side) seen.push(planes.plain[i]);
    else if (seen.length > 0 || step > 2) break;
  }
  return seen.length > 0 ? medianOf(seen.slice(seen.length >> 1)) : null;
}

/**
 * By place of a line with the subject on its right: lightness of the subject's side less that of the
 * ground's, L*, in the unsimplified picture; as at the place before where a side has no pixels.
 */
function lineContrast(
  { places, closed }: EvenPlaces,
  planes: SubjectPlanes,
  mask: Uint8Array,
): Float32Array {
  const count = places.length / 2;
  const raw: number[] = [];
  for (let i = 0; i < count; i++) {
    const before = closed ? (i + count - 1) % count : Math.max(0, i - 1);
    const after = closed ? (i + 1) % count : Math.min(count - 1, i + 1);
    const tx = places[2 * after] - places[2 * before];
    const ty = places[2 * after + 1] - places[2 * before + 1];
    const length = Math.hypot(tx, ty) || 1;
    const point = [places[2 * i], places[2 * i + 1]] as const;
    const subject = medianSideCode(planes, mask, 1, point, [-ty / length, tx / length]);
    const ground = medianSideCode(planes, mask, 0, point, [ty / length, -tx / length]);
    const known = subject !== null && ground !== null;
    raw.push(known ? (subject - ground) / codesPerLightness : (raw.at(-1) ?? 0));
  }
  return Float32Array.from(raw, (_, i) => {
    const near: number[] = [];
    for (let n = i - medianReach; n <= i + medianReach; n++) {
      if (closed) near.push(raw[(n + count) % count]);
      else if (n >= 0 && n < count) near.push(raw[n]);
    }
    return medianOf(near);
  });
}
