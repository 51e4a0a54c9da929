import type { WaterKind } from '../drying/water.ts';
import type { Step } from './plan.ts';

type Worked = Pick<Step, 'key' | 'kind'> & Partial<Pick<Step, 'technique'>>;

/** The kind of wash a step puts down; null where it wets nothing or how it is done is not known. */
export function waterKindOf({ key, kind, technique }: Worked): WaterKind | null {
  if (technique === undefined || technique === 'none') return null;
  if (kind === 'lift' || kind === 'splatter' || kind === 'details' || kind === 'accents')
    return kind;
  if (kind === 'last-lights') return 'accents';
  if (kind !== 'wash') return null;
  if (technique === 'wet-in-wet') return 'wetInWet';
  if (technique === 'glaze') return 'glaze';
  if (technique === 'dry brush') return 'accents';
  // wash / passage / number, and what tells its goes apart.
  return key.split('/')[2] === '1' ? 'wash' : 'stroke';
}
