import type { Lab } from '../colour/lab.ts';

/** What the trade says of a pigment; null where nobody is known to have said it. */
export interface PaintProperties {
  readonly transparency: 'T' | 'ST' | 'SO' | 'O' | null;
  /** 0 lifts easily, 1 some stain stays, 2 stains. */
  readonly staining: 0 | 1 | 2 | null;
  /** 0 even, 1 slight, 2 marked. */
  readonly granulation: 0 | 1 | 2 | null;
  /** ASTM category as remembered, or null: unknown. */
  readonly lightfastness: string | null;
  /** A short caution, or null. Always with 'check the label'. */
  readonly caution: string | null;
}

/** A paint with its optics: K and S per unit load, 36 samples 380..730 nm. */
export interface Paint {
  readonly id: string;
  readonly revision: number;
  /** Pigment name, her own wording allowed. */
  readonly name: string;
  /** Colour Index generic names. */
  readonly ci: readonly string[];
  readonly K: readonly number[];
  readonly S: readonly number[];
  readonly properties: PaintProperties;
  /**
   * Which of them are remembered and not hers; missing: all of them, as for the built-in paints.
   */
  readonly fromMemory?: readonly (keyof PaintProperties)[];
  /** Where the optics of an own paint come from; missing for the built-in ones. */
  readonly optics?: PaintOptics;
}

/**
 * `like`: those of a built-in paint, until it is measured. `measured`: fitted to a photo of her
 * swatches; `sure` 0..1, and `why` a sentence on how sure.
 */
type PaintOptics =
  | { readonly from: 'like'; readonly id: string }
  | { readonly from: 'measured'; readonly sure: number; readonly why: string };

/** A paint as the screens show it: no spectra, but its ladder from palest to masstone. */
export interface PaintCard {
  readonly id: string;
  readonly name: string;
  readonly ci: readonly string[];
  readonly properties: PaintProperties;
  readonly fromMemory?: readonly (keyof PaintProperties)[];
  readonly optics?: PaintOptics;
  /** Dry colour on the default paper at `ladderLoads`. */
  readonly ladder: readonly Lab[];
}

export const ladderLoads = [0.5, 1.5, 4, 10, 24] as const;

/** Whites and blacks stay out of a palette unless asked for. */
export const isWhiteOrBlack = (ci: readonly string[]): boolean =>
  ci.some((name) => name.startsWith('PW') || name.startsWith('PBk'));
