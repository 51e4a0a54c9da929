import type { ToneRange } from '../../../app/model/reading.ts';
import { shortSide } from '../../../app/model/short-side.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { targetOf } from '../../../app/model/tone-range.ts';
import type { KindTones } from './kind-tones.ts';
import { bandOfKind, brushedBand, familyOfKind, passageOfKind } from './kinds.ts';
import type { ShapeFacts } from './shape-facts.ts';

/** Shapes with a shorter side than this are small, mm. */
const smallMm = 3;
/** The whole sheet is one passage until a subject is chosen; then ground and subject, in this order. */
const wholeSheet = ['sheet'];
const parted = ['ground', 'subject'];

export interface SlotSettings {
  readonly tones: KindTones;
  /** Of the picture with her whites brushed in; null where she brushed none. */
  readonly brushed: KindTones | null;
  readonly range: ToneRange;
  readonly pxPerMm: number;
  /** The number on the screen of a band and of a family, by the number it has in a kind. */
  readonly bandNumber: (band: number) => number;
  readonly familyNumber: (family: number) => number;
  readonly hasSubject: boolean;
}

/** Sums over its shapes for every kind. */
function totalsOf({ kinds, areasPx, outlinesPx }: ShapeFacts, pxPerMm: number) {
  const totals = new Map<number, { px: number; shapes: number; small: number; largest: number }>();
  for (let shape = 0; shape < kinds.length; shape++) {
    const kind = kinds[shape] as number;
    const area = areasPx[shape] as number;
    const total = totals.get(kind) ?? { px: 0, shapes: 0, small: 0, largest: 0 };
    total.px += area;
    total.shapes++;
    total.largest = Math.max(total.largest, area);
    if (shortSide(area, outlinesPx[shape] as number) < smallMm * pxPerMm) total.small++;
    totals.set(kind, total);
  }
  return totals;
}

/** The slots by passage, band and family, and the kind each was made from. */
export function slotsOf(
  facts: ShapeFacts,
  settings: SlotSettings,
): { slots: Slot[]; kinds: number[] } {
  const { tones, brushed, range, pxPerMm, bandNumber, familyNumber, hasSubject } = settings;
  const passages = hasSubject ? parted : wholeSheet;
  const totals = totalsOf(facts, pxPerMm);
  let pixels = 0;
  for (const { px } of totals.values()) pixels += px;
  const order = (kind: number): number =>
    10_000 * passageOfKind(kind) +
    100 * bandNumber(bandOfKind(kind)) +
    familyNumber(familyOfKind(kind));
  const kinds = [...totals.keys()].sort((x, y) => order(x) - order(y) || x - y);
  const slots = kinds.map((kind): Slot => {
    const total = totals.get(kind) ?? { px: 0, shapes: 0, small: 0, largest: 0 };
    const byHand = bandOfKind(kind) === brushedBand;
    const mean = (byHand ? brushed : tones)?.meanOf((k) => k === kind);
    if (!mean) throw new RangeError(`Kind ${kind} came out of nothing`);
    const target = targetOf(range, { lab: mean.lab, tones: mean.tones, byHand });
    return {
      passage: passages[passageOfKind(kind)] as string,
      band: bandNumber(bandOfKind(kind)),
      family: familyNumber(familyOfKind(kind)),
      share: total.px / pixels,
      lab: mean.lab,
      ...target,
      ...(byHand && { byHand }),
      tones: mean.tones,
      shapes: total.shapes,
      smallShapes: total.small,
      largestMm2: total.largest / (pxPerMm * pxPerMm),
    };
  });
  return { slots, kinds };
}
