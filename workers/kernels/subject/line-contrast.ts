import type { EvenPlaces } from './even-places.ts';
import { codesPerLightness, type SubjectPlanes } from './subject-planes.ts';

/** How far to look to either side, % of the long side; of that the outer half counts. */
const reachShare = 1.5;
/** Single places are taken with so many neighbours on either side. */
const medianReach = 2;

const medianOf = (values: number[]): number => {
  values.sort((one, other) => one - other);
  const middle = values.length >> 1;
  return values.length % 2
    ? (values[middle] as number)
    : ((values[middle - 1] as number) + (values[middle] as number)) / 2;
};

/** Median code on one side of the line, from the outer half of the way until the side ends. */
function sideCode(
  planes: SubjectPlanes,
  mask: Uint8Array,
  side: number,
  [x, y]: readonly [number, number],
  [dx, dy]: readonly [number, number],
): number | null {
  const { width, height } = planes.size;
  const reach = Math.max(2, Math.ceil((Math.max(width, height) * reachShare) / 100));
  const seen: number[] = [];
  for (let way = 0; way < reach; way++) {
    // Smoothed, the line may run a pixel beside the mask's: the first steps may be on the wrong side.
    const column = Math.floor(x + dx * (way + 0.5));
    const row = Math.floor(y + dy * (way + 0.5));
    if (column < 0 || row < 0 || column >= width || row >= height) break;
    const i = row * width + column;
    if (mask[i] === side) seen.push(planes.plain[i] as number);
    else if (seen.length > 0 || way > 2) break;
  }
  return seen.length > 0 ? medianOf(seen.slice(seen.length >> 1)) : null;
}

/**
 * Along a line with the subject on its right: lightness of the subject's side less the ground's, L*,
 * at every place, on the unsimplified picture.
 */
export function lineContrast(
  { places, closed }: EvenPlaces,
  planes: SubjectPlanes,
  mask: Uint8Array,
): Float32Array {
  const count = places.length / 2;
  const raw: number[] = [];
  for (let i = 0; i < count; i++) {
    const before = closed ? (i + count - 1) % count : Math.max(0, i - 1);
    const after = closed ? (i + 1) % count : Math.min(count - 1, i + 1);
    const tx = (places[2 * after] as number) - (places[2 * before] as number);
    const ty = (places[2 * after + 1] as number) - (places[2 * before + 1] as number);
    const length = Math.hypot(tx, ty) || 1;
    const at = [places[2 * i] as number, places[2 * i + 1] as number] as const;
    const subject = sideCode(planes, mask, 1, at, [-ty / length, tx / length]);
    const ground = sideCode(planes, mask, 0, at, [ty / length, -tx / length]);
    const known = subject !== null && ground !== null;
    raw.push(known ? (subject - ground) / codesPerLightness : (raw.at(-1) ?? 0));
  }
  return Float32Array.from(raw, (_, i) => {
    const near: number[] = [];
    for (let n = i - medianReach; n <= i + medianReach; n++) {
      if (closed) near.push(raw[(n + count) % count] as number);
      else if (n >= 0 && n < count) near.push(raw[n] as number);
    }
    return medianOf(near);
  });
}
