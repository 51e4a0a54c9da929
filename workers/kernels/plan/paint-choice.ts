import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import type { PuddleOption } from './puddle-option.ts';

/** What the families are to be painted with. */
export interface PaintChoice {
  readonly works: readonly FamilyWork[];
  readonly options: readonly PuddleOption[];
  readonly paintCount: number;
  /** Most puddles in one wash. */
  readonly puddles: number;
  readonly paper: Ground;
}
