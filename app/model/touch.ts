import type { Range } from './lab.ts';
import type { Wetness } from './wetness.ts';

/** A smaller technique inside the step that makes its stroke. */
export type TouchTechnique =
  | 'graded wash'
  | 'merging'
  | 'charging'
  | 'negative painting'
  | 'dry brush'
  | 'water drops'
  | 'lifting'
  | 'scraping';

/** One such technique: where, how, and when. */
export interface Touch {
  readonly technique: TouchTechnique;
  /** One sentence, at most about 160 signs. */
  readonly text: string;
  /** The state the paper must be in. */
  readonly paper: Wetness;
  /** The window, minutes from the end of the stroke it belongs to; null where it does not run out. */
  readonly minutes: Range | null;
}
