import type { Part } from '../../paint/mix.ts';

/** A second puddle that a mix meets wet. */
export interface Meeting {
  readonly parts: readonly Part[];
  /** Its letter; null for a paint by itself. */
  readonly puddle: string | null;
}

/** A puddle that another may meet. */
export interface Candidate extends Meeting {
  /** It would be one puddle more at hand in this wash. */
  readonly isMore: boolean;
}

/** How a mix runs over its shapes: in every square how much of its own puddle and of a second one lies, ml/m2. */
export interface Run {
  /** Id of the mix; 'weaker' for the bands that take it thinner. */
  readonly mix: string;
  readonly strength: 'full' | 'weaker';
  /** What meets it wet; left out: it runs by strength alone. */
  readonly meets?: Meeting;
  readonly squares: readonly number[];
  readonly own: readonly number[];
  readonly other: readonly number[];
}
