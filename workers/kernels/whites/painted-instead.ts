import type { ToneRange } from '../../../app/model/reading.ts';
import { targetOf } from '../../../app/model/tone-range.ts';
import type { KindTones, MeanTones } from '../shapes/kind-tones.ts';
import {
  bandOfKind,
  brushedBand,
  familyOfKind,
  kindsAtMost,
  passageOfKind,
} from '../shapes/kinds.ts';

interface Painted extends MeanTones {
  readonly kind: number;
}

const nearestTo = ([, a, b]: MeanTones['lab'], kinds: readonly Painted[]): Painted =>
  kinds.reduce((best, one) =>
    Math.hypot(one.lab[1] - a, one.lab[2] - b) < Math.hypot(best.lab[1] - a, best.lab[2] - b)
      ? one
      : best,
  );

/**
 * The kind every kind becomes where she paints over a white: one that would stay paper goes to the
 * lightest painted band of its passage, to its own family there or the one nearest in colour. Itself
 * where it is painted anyway, or where its passage has nothing painted.
 */
export function paintedInstead(tones: KindTones, range: ToneRange): Uint8Array {
  const painted: Painted[] = [];
  const whites: Painted[] = [];
  for (let kind = 0; kind < kindsAtMost; kind++) {
    const mean = tones.meanOf((k) => k === kind);
    if (!mean || bandOfKind(kind) === brushedBand) continue;
    (targetOf(range, mean).reserve ? whites : painted).push({ ...mean, kind });
  }
  const instead = Uint8Array.from({ length: kindsAtMost }, (_, kind) => kind);
  for (const { kind, lab } of whites) {
    const near = painted.filter((one) => passageOfKind(one.kind) === passageOfKind(kind));
    const lightest = Math.min(...near.map((one) => bandOfKind(one.kind)));
    const choice = near.filter((one) => bandOfKind(one.kind) === lightest);
    if (choice.length === 0) continue;
    const own = choice.find((one) => familyOfKind(one.kind) === familyOfKind(kind));
    instead[kind] = (own ?? nearestTo(lab, choice)).kind;
  }
  return instead;
}
