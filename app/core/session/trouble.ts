import type { Wetness } from '../drying/wetness.ts';

/** What may go wrong on a sheet, in the order it is offered. */
export const troubles = [
  'backrun',
  'hard edge',
  'lost white',
  'too pale',
  'too dark',
  'muddy',
  'mask tore',
  'drying too fast',
] as const;

export type Trouble = (typeof troubles)[number];

/** How far a remedy depends on the wet: it still shines, its shine is going, it is cool, it is dry. */
export type RemedyState = 'wet' | 'satin' | 'cool' | 'dry';

export const remedyStateOf: Record<Wetness, RemedyState> = {
  flooded: 'wet',
  shiny: 'wet',
  satin: 'satin',
  damp: 'cool',
  'almost dry': 'cool',
  'bone dry': 'dry',
};
