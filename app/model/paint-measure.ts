import type { Lab } from './lab.ts';

/** What a painted patch is. Amounts compare the steps of one paint: each step twice as thin is 16, 8, 4, 2, 1. */
export type PatchMeaning =
  | { readonly kind: 'step'; readonly amount: number }
  /** The paint over a black line, as much as a step of that amount. */
  | { readonly kind: 'over-black'; readonly amount: number }
  /** The black line by itself. */
  | { readonly kind: 'black' }
  /** One part of it and one of another paint or of a white. */
  | { readonly kind: 'half'; readonly with: string };

/** A patch as measured: dry colour with the bare paper brought to the default paper. */
export interface PaintPatch {
  readonly lab: Lab;
  readonly is: PatchMeaning;
}

/** What a photo of her patches says of a paint. */
export interface PaintMeasure {
  /** K and S per unit load, 36 bands, as in `Paint`. */
  readonly K: readonly number[];
  readonly S: readonly number[];
  /** 0..1, and a sentence for the painter with what would help. */
  readonly sure: number;
  readonly why: string;
  /** Colour of every patch as the paint found would have it, in the order given. */
  readonly expected: readonly Lab[];
  /** Mean CIEDE2000 between the patches and that. */
  readonly misfit: number;
}

/** Fewer steps than this say too little to start with. */
export const fewestSteps = 2;
