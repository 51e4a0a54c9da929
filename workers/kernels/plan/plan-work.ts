import type { Technique } from '../../../app/model/technique.ts';
import type { SolvedWash } from './plan-facts.ts';
import type { StepDraft } from './step-draft.ts';

/** What she made of a wash: one go of two, two washes in one go, or one more layer of a row. */
export type WashChange = 'first go' | 'second go' | 'in one go' | 'once more';

/** A wash still to be put in its place: all that its step is made from. */
export interface WashWork {
  readonly kind: 'wash';
  readonly key: string;
  readonly passage: string;
  /** Its rows and slots; `after` and, where she changed it, the bands are not looked at. */
  readonly wash: SolvedWash;
  readonly technique: Technique;
  /** Left out: as planned. */
  readonly change?: WashChange;
  /** The wash it is a go of. */
  readonly whole?: SolvedWash;
}

/** Any other step, ready but for its place. */
export interface OtherWork {
  readonly kind: 'other';
  readonly key: string;
  readonly draft: StepDraft;
}

export type PlanWork = WashWork | OtherWork;

export const otherWork = (draft: StepDraft): OtherWork => ({
  kind: 'other',
  key: draft.key,
  draft,
});
