import type { Sentence } from '../../words/plan/words.ts';

/**
 * What a palette is offered for: it comes nearest to the picture; or comes nearly as near with fewest paints, with
 * least against its paints, or granulating most; or she chose it paint by paint.
 */
export type PaletteCharacter = 'nearest' | 'fewest' | 'cleanest' | 'granulating' | 'chosen';

/** What a palette does worse without one of its paints. */
export interface PaintLoss {
  /** Munsell values by which the darks end lighter. */
  readonly darksLighter: number;
  /** Mean CIEDE2000 of the painted area that is lost, surcharges for mixed paints included. */
  readonly furtherOff: number;
  readonly families: readonly FamilyLoss[];
}

export interface FamilyLoss {
  /** In painter's words: 'dull green'. */
  readonly name: string;
  /** Of the painted area, 0..1. */
  readonly share: number;
  /** Mean CIEDE2000 lost within the family. */
  readonly furtherOff: number;
}

interface OfferedPaint {
  readonly id: string;
  /** What it is for, in about five words. */
  readonly why: Sentence;
  /** What gets worse without it; null: it is the only paint. */
  readonly lostWithout: PaintLoss | null;
}

export interface PaletteOffer {
  readonly character: PaletteCharacter;
  /** In the order of the paint box. */
  readonly paints: readonly OfferedPaint[];
  /** Mean CIEDE2000 of the best single washes, with the surcharges per paint; lower is better. */
  readonly cost: number;
  /** Mean CIEDE2000 over the painted area between the last wash and what the picture wants. */
  readonly meanDifference: number;
  /** Munsell values by which the darks end lighter than the picture wants them; 0 where they are reached. */
  readonly valuesShort: number;
}

/** The paint that brings the darks nearest to what they should be. */
export interface DarkRemedy {
  readonly id: string;
  readonly name: string;
  /** Whether it lies in her box. */
  readonly owned: boolean;
  /** Munsell values still missing with it; 0 where it closes the gap. */
  readonly valuesShort: number;
}

/** The palette of the plan, and up to three others to choose from. */
export interface PaletteOffers {
  readonly current: PaletteOffer;
  readonly others: readonly PaletteOffer[];
  /** Null where the darks are reached, or nothing helps. */
  readonly remedy: DarkRemedy | null;
}
