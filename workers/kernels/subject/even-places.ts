import type { TracedLine } from './trace-line.ts';

/** Places along a line, evenly far apart; x and y by turns, px. */
export interface EvenPlaces {
  readonly places: Float32Array;
  readonly closed: boolean;
  readonly stepPx: number;
}

/** Means over `reach` places to either side, so that the pixels' stairs go; open ends stay put. */
function smoothed({ places, closed }: TracedLine, reach: number): Float32Array {
  // A closed line repeats its first place at its end.
  const count = places.length / 2 - (closed ? 1 : 0);
  const out = new Float32Array(2 * count);
  for (let i = 0; i < count; i++) {
    const side = closed ? Math.min(reach, (count - 1) >> 1) : Math.min(reach, i, count - 1 - i);
    let [x, y] = [0, 0];
    for (let n = i - side; n <= i + side; n++) {
      const at = (n + count) % count;
      x += places[2 * at] as number;
      y += places[2 * at + 1] as number;
    }
    out[2 * i] = x / (2 * side + 1);
    out[2 * i + 1] = y / (2 * side + 1);
  }
  return out;
}

/** A traced line without its stairs, in steps of about `stepPx` (at least two of them). */
export function evenPlaces(line: TracedLine, stepPx: number): EvenPlaces {
  const smooth = smoothed(line, Math.max(2, Math.round(stepPx / 2)));
  const count = smooth.length / 2;
  const last = line.closed ? count : count - 1;
  const lengths = new Float32Array(last + 1);
  for (let i = 0; i < last; i++) {
    const next = (i + 1) % count;
    const dx = (smooth[2 * next] as number) - (smooth[2 * i] as number);
    const dy = (smooth[2 * next + 1] as number) - (smooth[2 * i + 1] as number);
    lengths[i + 1] = (lengths[i] as number) + Math.hypot(dx, dy);
  }
  const whole = lengths[last] as number;
  const steps = Math.max(2, Math.round(whole / stepPx));
  const wanted = line.closed ? steps : steps + 1;
  const places = new Float32Array(2 * wanted);
  let before = 0;
  for (let n = 0; n < wanted; n++) {
    const way = (whole * n) / steps;
    while (before < last - 1 && (lengths[before + 1] as number) < way) before++;
    const next = (before + 1) % count;
    const from = lengths[before] as number;
    const gap = (lengths[before + 1] as number) - from;
    const t = gap > 0 ? Math.min(1, (way - from) / gap) : 0;
    for (const axis of [0, 1]) {
      const here = smooth[2 * before + axis] as number;
      places[2 * n + axis] = here + t * ((smooth[2 * next + axis] as number) - here);
    }
  }
  return { places, closed: line.closed, stepPx: whole / steps };
}
