import type { ChangedAmounts } from '../paint/former-amounts.ts';

export type Technique =
  | 'wet on dry'
  | 'wet-in-wet'
  | 'glaze'
  | 'dry brush'
  | 'negative painting'
  | 'scraping'
  | 'lifting'
  | 'splatter'
  | 'masking'
  | 'opaque white'
  | 'none';

/** A step she may put in: one more layer of a mix, or one of the others anywhere. */
export type AddedKind = 'wash' | 'dry' | 'lift' | 'splatter' | 'accents';

/**
 * One change of hers to the steps. Steps and mixes are named by key and id, which stay the same when the plan
 * is made again; where they are gone the change waits until they are back.
 */
export type PlanEdit =
  /** Left out, or put back. */
  | { readonly kind: 'skip'; readonly key: string; readonly skipped: boolean }
  /** `id` makes its key; `mix` is the row of an added wash; null: at the very start. */
  | {
      readonly kind: 'add';
      readonly id: string;
      readonly what: AddedKind;
      readonly mix: string | null;
      readonly after: string | null;
    }
  /** Right after that step; null: to the very start. */
  | { readonly kind: 'move'; readonly key: string; readonly after: string | null }
  /** A wash in two goes, one colour family after the other. */
  | { readonly kind: 'split'; readonly key: string }
  /** A wash painted together with the next one of its passage. */
  | { readonly kind: 'merge'; readonly key: string }
  | { readonly kind: 'technique'; readonly key: string; readonly technique: Technique }
  /** A row mixed otherwise. */
  | ({ readonly kind: 'mix'; readonly mix: string } & ChangedAmounts);

/** Order of ground and subject; together: as one, their line painted across while wet. */
export type PassagesChoice = 'ground first' | 'subject first' | 'together';

export const passagesChoices: readonly PassagesChoice[] = [
  'ground first',
  'subject first',
  'together',
];
