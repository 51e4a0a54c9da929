import type { Lab } from '../../colour/lab.ts';

/** A touch of the brush after the washes: on a small shape of the reading, or the darkest, or opaque white. */
export interface Mark {
  readonly kind: 'detail' | 'accent' | 'sparkle';
  /** Index into `Reading.details.shapes`. */
  readonly shape: number;
  /** Id of the mix it is set with, and ml/m2 of it; left out for opaque white. */
  readonly mix?: string;
  readonly load?: number;
  /** Its dry colour. */
  readonly lab: Lab;
}
