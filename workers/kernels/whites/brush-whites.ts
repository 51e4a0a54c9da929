import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { ToneRange } from '../../../app/model/reading.ts';
import type { WhiteStroke } from '../../../app/model/whites.ts';
import type { KindTones } from '../shapes/kind-tones.ts';
import {
  bandOfKind,
  brushedBand,
  familiesPerBand,
  familyOfKind,
  groupOf,
  kindOf,
  kindsAtMost,
  passageOfKind,
} from '../shapes/kinds.ts';
import { paintedInstead } from './painted-instead.ts';
import { brushedAs, whiteStrokeMap } from './white-stroke-map.ts';

/** The commonest family of a passage in the picture. */
function commonestFamily(tones: KindTones, passage: number): number {
  let best = 0;
  let most = 0;
  for (let family = 0; family < familiesPerBand; family++) {
    const own = tones.meanOf((k) => familyOfKind(k) === family && passageOfKind(k) === passage);
    if (!own || own.pixels <= most) continue;
    best = family;
    most = own.pixels;
  }
  return best;
}

/**
 * Her strokes, brought into the maps in place. What she keeps becomes one kind of each passage, so that
 * no border runs within a white; it is told by its band and goes by its passage's commonest family.
 * `tones` are of the picture before; without strokes nothing happens.
 */
export function brushWhites(
  maps: { readonly kinds: Uint8Array; readonly bands: Uint8Array },
  strokes: readonly WhiteStroke[],
  { width, height }: PixelSize,
  tones: KindTones,
  range: ToneRange,
): void {
  if (strokes.length === 0) return;
  const { kinds, bands } = maps;
  const brushed = whiteStrokeMap(strokes, { width, height });
  const painted = paintedInstead(tones, range);
  const kept = Uint8Array.from({ length: kindsAtMost }, (_, kind) => {
    const passage = passageOfKind(kind);
    return kindOf(groupOf(brushedBand, passage), commonestFamily(tones, passage));
  });
  for (let i = 0; i < kinds.length; i++) {
    const stroke = brushed[i] as number;
    if (stroke === 0) continue;
    const table = stroke === brushedAs.keep ? kept : painted;
    const kind = table[kinds[i] as number] as number;
    kinds[i] = kind;
    bands[i] = bandOfKind(kind);
  }
}
