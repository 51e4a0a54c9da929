import type { WaterKind } from '../drying/water.ts';
import type { Step } from './plan.ts';

type Worked = Pick<Step, 'key' | 'kind'> & Partial<Pick<Step, 'technique' | 'areas'>>;

/** The kind of wash a step puts down; null where it wets nothing or how it is done is not known. */
export function waterKindOf({ key, kind, technique, areas = [] }: Worked): WaterKind | null {
  if (technique === undefined || technique === 'none') return null;
  if (kind === 'lift' || kind === 'splatter' || kind === 'details' || kind === 'accents')
    return kind;
  if (kind === 'last-lights') return 'accents';
  if (kind !== 'wash') return null;
  // The sheet is as wet as its wettest part.
  if (areas.some((area) => area.technique === 'wet-in-wet')) return 'wetInWet';
  if (technique === 'wet-in-wet') return 'wetInWet';
  if (technique === 'glaze') return 'glaze';
  if (technique === 'dry brush') return 'accents';
  // wash / passage / number, and what tells its goes apart.
  return key.split('/')[2] === '1' ? 'wash' : 'stroke';
}
