import type { Lab } from '../colour/lab.ts';
import type { Spectrum } from '../colour/spectrum.ts';

/** What the trade says of a pigment; null where nobody is known to have said it. */
export interface PaintProperties {
  readonly transparency: 'T' | 'ST' | 'SO' | 'O' | null;
  /** 0 lifts easily, 1 some stain stays, 2 stains. */
  readonly staining: 0 | 1 | 2 | null;
  /** 0 even, 1 slight, 2 marked. */
  readonly granulation: 0 | 1 | 2 | null;
  /** ASTM category as remembered, or null: unknown. */
  readonly lightfastness: string | null;
  /** A short caution, or null: none, or nothing is known (`PaintCard.care` tells which). */
  readonly caution: string | null;
}

/** Where the optics of a paint come from. */
export type Provenance =
  | 'measured watercolour'
  | 'rescaled from acrylic'
  | 'estimated from published colour'
  | 'recipe';

/** What mixing needs of a paint. */
export interface TubePaint {
  /** Absorption and scattering per load, 36 samples 380..730 nm; load 1 is the pale wash of the optics table. */
  readonly K: Spectrum;
  readonly S: Spectrum;
  /** Loads that 1 ml of tube paint gives on a square metre; missing in plans that were made by loads: 1. */
  readonly strength?: number;
  /** Factor by which her scraps have corrected `strength`; missing: 1. */
  readonly corrected?: number;
  /** Load of its masstone: thicker is no wash; missing likewise. */
  readonly mostLoad?: number;
}

/** The most a plan laid before paints had a masstone of their own. */
const formerMostLoad = 32;

export const strengthOf = ({ strength }: Pick<TubePaint, 'strength'>): number => strength ?? 1;

/** Tube paint of a full coat, its masstone, ml/m2. */
export const coatOf = (paint: Pick<TubePaint, 'strength' | 'mostLoad'>): number =>
  (paint.mostLoad ?? formerMostLoad) / strengthOf(paint);

/** Tube paint of a full coat where nobody has said, ml/m2 (own; data/pigment-optics.json, `strength`). */
export const usualCoat = 20;

/** What tells the optics of one paint from those of another, or of its own before. */
export const opticsKey = ({ id, revision, corrected = 1 }: Paint): string =>
  `${id} ${revision} ${corrected}`;

/** A paint with its optics. */
export interface Paint extends TubePaint {
  readonly id: string;
  readonly revision: number;
  /** Pigment name, her own wording allowed. */
  readonly name: string;
  /** Colour Index generic names. */
  readonly ci: readonly string[];
  readonly K: readonly number[];
  readonly S: readonly number[];
  /** Missing for her own paints. */
  readonly provenance?: Provenance;
  /** CIEDE2000 by which a middling wash of somebody's tube may differ from the table's; missing likewise. */
  readonly confidence?: number;
  /** Of a tube that is mixed by its maker: Colour Index names, in parts of volume. Missing: one pigment. */
  readonly madeOf?: readonly { readonly ci: string; readonly parts: number }[];
  readonly properties: PaintProperties;
  /**
   * Which of them are commonly given and not hers; missing: all of them, as for the built-in paints.
   */
  readonly fromMemory?: readonly (keyof PaintProperties)[];
  /** Where the optics of an own paint come from; missing for the built-in ones. */
  readonly optics?: PaintOptics;
}

/** What makes it more or less sure how a paint was measured, with the number of its steps. */
export type SureWhy =
  | { readonly why: 'white-on-white' | 'disagree' | 'only-strong' | 'uneven' }
  | { readonly why: 'few-steps' | 'hiding-unseen' | 'all-agree'; readonly steps: number };

/**
 * `like`: those of a built-in paint, until it is measured. `measured`: fitted to a photo of her
 * swatches; `sure` 0..1, and why; a sentence in boxes from before that was a code.
 */
type PaintOptics =
  | { readonly from: 'like'; readonly id: string }
  | { readonly from: 'measured'; readonly sure: number; readonly why: SureWhy | string };

/** A paint as the screens show it: no spectra, but its ladder from palest to masstone. */
export interface PaintCard {
  readonly id: string;
  readonly name: string;
  readonly ci: readonly string[];
  readonly properties: PaintProperties;
  /** Its caution; without one a sentence that says whether nothing is remembered or nothing is known. */
  readonly care: string;
  readonly fromMemory?: readonly (keyof PaintProperties)[];
  readonly optics?: PaintOptics;
  readonly provenance?: Provenance;
  readonly confidence?: number;
  readonly madeOf?: Paint['madeOf'];
  readonly strength?: number;
  /** Further words to find it by. */
  readonly alsoCalled?: string;
  /** Among the built-in paints boxes hold most often, from 0; missing for the others. */
  readonly placeAmongOwned?: number;
  /** Dry colour on the default paper at `ladderShares` of its full coat. */
  readonly ladder: readonly Lab[];
}

/** From the palest tint to a full coat. */
export const ladderShares = [1 / 40, 1 / 14, 1 / 5, 1 / 2, 1] as const;

/** Whites and blacks stay out of a palette unless asked for. */
export const isWhiteOrBlack = (ci: readonly string[]): boolean =>
  ci.length > 0 && ci.every((name) => name.startsWith('PW') || name.startsWith('PBk'));
