import type { Range } from '../../../app/model/lab.ts';

/**
 * How long painting takes: area by a pace and some seconds a shape, shapes counted up to 150 (beyond
 * that she works in texture). Own estimate, no source; a wide range on purpose.
 */
export function paintMinutes(
  areaCm2: number,
  shapes: number,
  pace: { readonly cm2PerMinute: number; readonly secondsPerShape: number },
): Range {
  const minutes = areaCm2 / pace.cm2PerMinute + (Math.min(shapes, 150) * pace.secondsPerShape) / 60;
  return [Math.max(1, Math.floor(0.7 * minutes)), Math.max(2, Math.ceil(1.5 * minutes))];
}
