import type { KindTones } from '../shapes/kind-tones.ts';
import { bandOfKind, brushedBand } from '../shapes/kinds.ts';

const mostBands = 7;

/**
 * Pixels per band with those of her whites counted to the lightest band that has some of its
 * own; where all is hers, to the lightest the picture has.
 */
export function withBrushedWhites(areas: Uint32Array, tones: KindTones): Uint32Array {
  const brushed = areas[brushedBand] as number;
  if (brushed === 0) return areas;
  const bands = Array.from({ length: mostBands }, (_, i) => i + 1);
  const lightest =
    bands.find((band) => areas[band]) ??
    bands.find((band) => tones.meanOf((kind) => bandOfKind(kind) === band)) ??
    1;
  const counted = areas.slice();
  counted[brushedBand] = 0;
  counted[lightest] = (counted[lightest] as number) + brushed;
  return counted;
}
