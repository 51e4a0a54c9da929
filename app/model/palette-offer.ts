/**
 * What a palette is offered for: it comes nearest to the picture; or comes nearly as near with fewest paints, with
 * least against its paints, or granulating most; or she chose it paint by paint.
 */
export type PaletteCharacter = 'nearest' | 'fewest' | 'cleanest' | 'granulating' | 'chosen';

export interface OfferedPaint {
  readonly id: string;
  /** What it is for, in about five words. */
  readonly why: string;
  /** What gets worse without it, to follow 'Without it'. */
  readonly lostWithout: string;
}

export interface PaletteOffer {
  readonly character: PaletteCharacter;
  /** In the order of the paint box. */
  readonly paints: readonly OfferedPaint[];
  /** Design, 'Palette': mean CIEDE2000 of best single washes with the surcharges; lower is better. */
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
