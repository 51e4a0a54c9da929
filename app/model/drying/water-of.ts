import type { Step } from '../wash-plan.ts';

/** Water a kind of wash puts down, g/m2 (own figures, fitted to reported times; label as estimates). */
export const waterOf = {
  accents: 15,
  splatter: 15,
  lift: 20,
  glaze: 20,
  stroke: 40,
  wash: 60,
  wetInWet: 150,
} as const;

export type WaterKind = keyof typeof waterOf;

/** The same where a wash is to dry sooner and still to run, g/m2 (own figures); the rest as usual. */
export const lessWaterOf: Partial<Record<WaterKind, number>> = {
  stroke: 30,
  wash: 40,
  wetInWet: 100,
};

/** Water of one stroke whose edge is to be softened, g/m2 (own estimate). */
export const strokeWater = 30;

/** How each kind is called on screen. */
export const waterWords: Record<WaterKind, string> = {
  accents: 'small dark touches',
  splatter: 'splatter',
  lift: 'lifting',
  glaze: 'thin glazes',
  stroke: 'later washes on dry paper',
  wash: 'first washes on dry paper',
  wetInWet: 'wet-in-wet washes',
};

type Worked = Pick<Step, 'key' | 'kind'> & Partial<Pick<Step, 'technique'>>;

/** The kind of wash a step puts down; null where it wets nothing or how it is done is not known. */
export function waterKindOf({ key, kind, technique }: Worked): WaterKind | null {
  if (technique === undefined || technique === 'none') return null;
  if (kind === 'lift' || kind === 'splatter' || kind === 'accents') return kind;
  if (kind === 'last-lights') return 'accents';
  if (kind !== 'wash') return null;
  if (technique === 'wet-in-wet') return 'wetInWet';
  if (technique === 'glaze') return 'glaze';
  if (technique === 'dry brush') return 'accents';
  // wash / passage / number, and what tells its goes apart.
  return key.split('/')[2] === '1' ? 'wash' : 'stroke';
}
