import type { Lab } from '../../colour/lab.ts';
import type { MixSpectra } from '../../paint/layer.ts';
import type { Mix } from '../plan.ts';
import type { Run } from './run.ts';
import type { Underneath } from './solve-square.ts';

/** Rows of the squares that one mix covers in one step at one strength. */
export interface Group {
  readonly mix: Mix;
  readonly strength: Run['strength'];
  readonly load: number;
  readonly rows: readonly number[];
  readonly spectra: MixSpectra;
  readonly most: number;
}

/** What one square of a group is to become, and over what. */
export interface SquareAim {
  readonly underneath: Underneath;
  /** L*, a*, b*. */
  readonly target: Lab;
  /** Squares it stands for, by the group's share of them. */
  readonly weight: number;
}
