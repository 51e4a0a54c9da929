import type { CutStroke } from './stroke-on-photo.ts';

/**
 * How an area is painted otherwise than it is in the photo: left out, as if what surrounds it went on
 * there; or one value (Munsell, 10 L*) lighter or darker.
 */
export type Change = 'leave-out' | 'lighter' | 'darker';

/** Over the cut-out; brush 0: all that lies within the line. The photo itself is never changed. */
export interface Alteration extends CutStroke {
  readonly change: Change;
}
